import type { JudgeSettings } from './settings.ts'
import type { Requirement } from './requirement.ts'
import { sayValue } from './say-value.ts'
import type { MeasuredValue } from './value.ts'
import type { ZoneFinding } from './zones.ts'

/**
 * How a value that is not proven can be proven, or what an advisory figure has to say. Null when nothing has.
 */
export function adviceFor(
  requirement: Requirement, value: MeasuredValue, zone: ZoneFinding, guardBand: number, settings: JudgeSettings,
): string | null {
  const { limits, quantity } = requirement
  const say = (figure: number) => sayValue(figure, quantity, settings.unit)
  if (zone.kind === 'not-proven') {
    const room = limits.low === null || limits.high === null ? Infinity : limits.high - limits.low
    if (value.greatest - value.least + 2 * guardBand > room) {
      return `With an uncertainty of ${say(guardBand)} nothing between these limits can be proven: `
        + 'measure with a better gauge.'
    }
    return `Nearer to ${sideWords(zone.side)} than the uncertainty of ${say(guardBand)}: `
      + 'measure again with a better gauge, or let a second person measure with another one.'
  }
  // What is outside may not be used, and its remedy is said elsewhere.
  if (zone.kind === 'outside') return null
  if (limits.adviceHigh !== null && value.greatest > limits.adviceHigh) {
    return `More than the ${say(limits.adviceHigh)} advised: it may be used, but look at it.`
  }
  if (limits.adviceLow !== null && value.least < limits.adviceLow) {
    return `Less than the ${say(limits.adviceLow)} advised: it may be used, but look at it.`
  }
  return null
}

function sideWords(side: ZoneFinding['side']): string {
  return side === 'both' ? 'both limits' : `the ${side} limit`
}
