import type { Nanometres } from './length.ts'
import { add, subtract } from './length.ts'
import type { LengthUnit } from './length-unit.ts'
import { parseLength } from './parse-length.ts'

/** Which way a comparator counts: on many bore gauges a plus (clockwise) means a smaller bore. */
export const gaugeSenses = ['plus-is-larger', 'plus-is-smaller'] as const
export type GaugeSense = (typeof gaugeSenses)[number]

/**
 * Reads what a comparator shows, as a size: `+3` in tenths on a setting of 4.0300 in is 4.0303 in.
 * @param settingSize the size at which the gauge was set to zero
 * @param unit what the figure counts when the text names no unit
 * @throws DomainError as parseLength
 */
export function parseDeviation(
  text: string,
  settingSize: Nanometres,
  unit: LengthUnit,
  sense: GaugeSense = 'plus-is-larger',
): Nanometres {
  const deviation = parseLength(text, unit)
  return sense === 'plus-is-larger' ? add(settingSize, deviation) : subtract(settingSize, deviation)
}
