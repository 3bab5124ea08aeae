import type { MeasuringState, Place } from './feature.ts'

/** A measuring state as a person says it. */
export const measuringStateTitles: Record<MeasuringState, string> = {
  'torque-plate-on': 'torque plate on',
  'caps-torqued': 'caps torqued',
  'shells-in': 'shells in',
  soaked: 'soaked to room temperature',
  coated: 'coated',
}

/** A place as a person says it: `piston-pin/3` is “piston pin 3”. */
export function placeTitle(place: Place): string {
  return place.replaceAll('-', ' ').replace('/', ' ')
}
