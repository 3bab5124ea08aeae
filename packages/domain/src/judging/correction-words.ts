import { sayLength } from '../exact/format-length.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import { materials } from '../temperature/material.ts'
import { sayDegrees } from '../temperature/say-degrees.ts'
import type { MeasuredValue } from './value.ts'

/** What a value was corrected for, told beside it: “Bore 1 corrected to 20 °C by −0.0002 in (part 25.0 °C, …)”. */
export function correctionWords({ corrected = [] }: MeasuredValue, unit: ReaderUnit): string | null {
  if (corrected.length === 0) return null
  return corrected.map(({ title, change, warmth: { part, gauge, material } }) => {
    const by = `${change > 0 ? '+' : ''}${sayLength(change, unit)}`
    return `${title} is corrected to 20 °C by ${by}: part ${sayDegrees(part)}, gauge ${sayDegrees(gauge)}, `
      + `${materials[material].title.toLowerCase()}.`
  }).join(' ')
}
