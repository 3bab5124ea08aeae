import { round } from '../exact/rounding.ts'
import { sizeAtReference, sizeAtTemperature } from './expansion.ts'
import { materials, type MaterialName } from './material.ts'

/** How warm part and gauge were, in thousandths of a °C, and what the part is made of. */
export interface Warmth {
  readonly part: number
  /** Of a comparator the temperature of what it was set on, where that is told. */
  readonly gauge: number
  readonly material: MaterialName
}

/** What a pass tells of temperature, in thousandths of a °C. */
export interface TemperatureTold {
  readonly temperatures: { readonly part: number; readonly room: number } | null
  readonly setting: { readonly temperature: number | null } | null
  readonly material: MaterialName | null
}

/** By what the sizes of a pass are corrected; null where they are taken as read. */
export function warmthOf({ temperatures, setting, material }: TemperatureTold): Warmth | null {
  if (temperatures === null || material === null) return null
  return { part: temperatures.part, gauge: setting?.temperature ?? temperatures.room, material }
}

/**
 * A reading at 20 °C: the gauge, of gauge steel, has grown with its own temperature and shows too little, the part with
 * its own and shows too much. Whole nanometres, half to even.
 * @throws DomainError `value-out-of-range` outside −40 to 250 °C
 * @formula corrected-reading
 */
export function correctReading(value: number, { part, gauge, material }: Warmth): number {
  const trueSize = sizeAtTemperature(value, gauge, materials['gauge-steel'].expansion)
  return round(sizeAtReference(trueSize, part, materials[material].expansion), 'half-even')
}
