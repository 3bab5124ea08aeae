import type { Limits } from './requirement.ts'
import { findingOf, type Zone, type ZoneFinding } from './zones.ts'

/** A gap that the one blade enters and the other does not; null where no thicker one was tried. */
export interface FeelerInterval {
  readonly enters: number
  readonly stops: number | null
}

/**
 * What feelers prove of a gap against its limits. The gap is `enters` at least and less than `stops`, so a minimum is
 * proven by the blade equal to it and a maximum by the blade equal to it that does not enter; limits inside the interval
 * are not proven. Blades carry no uncertainty here: a blade is taken for what is written on it. Common practice, no source.
 * @param gap compared with the low limit
 * @param widest compared with the high limit, where another gap of the feature is the widest
 * @formula feeler-interval
 */
export function zoneOfFeelers(gap: FeelerInterval, limits: Limits, widest: FeelerInterval = gap): ZoneFinding {
  const [lowStops, highStops] = [gap.stops ?? Infinity, widest.stops ?? Infinity]
  const low = limits.low === null ? 'within' : zone(gap.enters >= limits.low, lowStops <= limits.low)
  const high = limits.high === null ? 'within' : zone(highStops <= limits.high, widest.enters > limits.high)
  return findingOf(low, high)
}

function zone(isProven: boolean, isRefuted: boolean): Zone {
  if (isProven) return 'within'
  return isRefuted ? 'outside' : 'not-proven'
}
