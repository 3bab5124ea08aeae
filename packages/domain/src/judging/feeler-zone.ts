import type { FeelerGap } from '../exact/parse-feelers.ts'
import type { Limits } from './requirement.ts'
import { findingOf, type Zone, type ZoneFinding } from './zones.ts'

/**
 * What feelers prove of a gap against its limits. The gap is `enters` at least and less than `stops`, so a minimum is
 * proven by the blade equal to it and a maximum by the blade equal to it that does not enter; limits inside the interval
 * are not proven. Blades carry no uncertainty here: a blade is taken for what is written on it. Common practice, no source.
 * @formula feeler-interval
 */
export function zoneOfFeelers({ enters, stops }: FeelerGap, limits: Limits): ZoneFinding {
  const above = stops ?? Infinity
  const low = limits.low === null ? 'within' : zone(enters >= limits.low, above <= limits.low)
  const high = limits.high === null ? 'within' : zone(above <= limits.high, enters > limits.high)
  return findingOf(low, high)
}

function zone(isProven: boolean, isRefuted: boolean): Zone {
  if (isProven) return 'within'
  return isRefuted ? 'outside' : 'not-proven'
}
