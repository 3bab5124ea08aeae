import type { ReaderUnit, Requirement, Verdict } from '@tenths/domain'
import { sayValue } from '@tenths/domain'

/** The limits of a requirement in one breath: “0.0006 in to 0.0010 in, target 0.0007 in”. */
export function limitsWords({ limits, quantity }: Requirement, unit: ReaderUnit): string {
  const { low, high, target } = limits
  const say = (value: number) => sayValue(value, quantity, unit)
  const aim = target === null ? '' : `, target ${say(target)}`
  if (low !== null && high !== null) return `${say(low)} to ${say(high)}${aim}`
  if (low !== null) return `${say(low)} at least${aim}`
  if (high !== null) return `${say(high)} at most${aim}`
  return target === null ? 'no limit' : `target ${say(target)}`
}

/**
 * What was measured: one value, or from the least to the greatest; null before it was. What lies outside by less than the
 * figures show is said to: it would read as the limit itself.
 */
export function valueWords({ least, greatest }: Verdict, { quantity, limits }: Requirement, unit: ReaderUnit): string | null {
  if (least === null || greatest === null) return null
  const figure = (value: number) => sayValue(value, quantity, unit)
  const say = (value: number) => {
    const said = figure(value)
    if (limits.low !== null && value < limits.low && said === figure(limits.low)) return `just under ${said}`
    if (limits.high !== null && value > limits.high && said === figure(limits.high)) return `just over ${said}`
    return said
  }
  return least === greatest ? say(least) : `${say(least)} to ${say(greatest)}`
}

/** A probability as a person reads it, never rounded up to certainty. */
export function probabilityWords(probability: number): string {
  const percent = 100 * probability
  if (percent > 99.9 && percent < 100) return 'more than 99.9 %'
  if (percent < 0.1 && percent > 0) return 'less than 0.1 %'
  return `${percent.toFixed(percent > 99 || percent < 1 ? 1 : 0)} %`
}
