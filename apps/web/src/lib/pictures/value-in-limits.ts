import type { ReaderUnit, Requirement, Verdict } from '@tenths/domain'
import { sayValue } from '@tenths/domain'

/** A stretch of the drawing, from left to right. */
export interface Stretch {
  readonly from: number
  readonly to: number
}

/** Everything that the drawing shows, in its own width. */
export interface ValueInLimitsDrawing {
  readonly low: number | null
  readonly high: number | null
  readonly target: number | null
  /** Between the limits; open to the side that has none. */
  readonly between: Stretch
  /** Kept from each limit: a value in it is not proven. */
  readonly guards: readonly Stretch[]
  readonly value: Stretch
  readonly uncertainty: Stretch
}

/** Room left at both ends, as a part of what is shown. */
const margin = 0.12

/**
 * Where a value lies in its limits, drawn to scale over a given width; null before it is measured.
 * @param width of the drawing, in its own units
 */
export function drawValueInLimits(requirement: Requirement, verdict: Verdict, width: number): ValueInLimitsDrawing | null {
  const { least, greatest, uncertainty, guardBand } = verdict
  if (least === null || greatest === null) return null
  const { low, high, target } = requirement.limits
  const spread = uncertainty ?? 0
  const shown = [
    low === null ? null : low - guardBand, high === null ? null : high + guardBand, target,
    least - spread, greatest + spread,
  ].filter((value) => value !== null)
  const from = Math.min(...shown)
  const span = Math.max(...shown) - from || Math.max(Math.abs(from), 1)
  const scale = width / (span * (1 + 2 * margin))
  const at = (value: number) => (value - from + span * margin) * scale
  const edge = (value: number | null, other: number) => (value === null ? other : at(value))
  return {
    low: low === null ? null : at(low),
    high: high === null ? null : at(high),
    target: target === null ? null : at(target),
    between: { from: edge(low, 0), to: edge(high, width) },
    guards: guardBand === 0 ? [] : [
      ...(low === null ? [] : [{ from: at(low - guardBand), to: at(low + guardBand) }]),
      ...(high === null ? [] : [{ from: at(high - guardBand), to: at(high + guardBand) }]),
    ],
    value: { from: at(least), to: at(greatest) },
    uncertainty: { from: at(least - spread), to: at(greatest + spread) },
  }
}

/** The same in words, for those who cannot see the picture. */
export function describeValueInLimits({ limits, quantity }: Requirement, verdict: Verdict, unit: ReaderUnit): string {
  const { least, greatest, uncertainty, guardBand } = verdict
  if (least === null || greatest === null) return 'Not measured.'
  const say = (value: number) => sayValue(value, quantity, unit)
  const value = least === greatest ? say(least) : `${say(least)} to ${say(greatest)}`
  return [
    `${value}${uncertainty === null ? '' : `, give or take ${say(uncertainty)}`}.`,
    ...(limits.low === null ? [] : [marginWords(least - limits.low, 'low', say(limits.low), say)]),
    ...(limits.high === null ? [] : [marginWords(limits.high - greatest, 'high', say(limits.high), say)]),
    ...(guardBand === 0 ? [] : [`A guard band of ${say(guardBand)} is kept from each limit.`]),
  ].join(' ')
}

function marginWords(margin: number, side: 'low' | 'high', limit: string, say: (value: number) => string): string {
  const beyond = side === 'low' ? 'below' : 'above'
  if (margin === 0) return `On the ${side} limit ${limit}.`
  return margin < 0
    ? `${say(-margin)} ${beyond} the ${side} limit ${limit}.`
    : `${say(margin)} inside the ${side} limit ${limit}.`
}
