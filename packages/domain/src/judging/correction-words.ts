import { fixed, sayLength } from '../exact/format-length.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import { materials } from '../temperature/material.ts'
import type { MeasuredValue } from './value.ts'

/** What a value was corrected for, told beside it: “Bore 1 corrected to 20 °C by −0.0002 in (part 25.0 °C, …)”. */
export function correctionWords({ corrected = [] }: MeasuredValue, unit: ReaderUnit): string | null {
  if (corrected.length === 0) return null
  return corrected.map(({ title, change, warmth: { part, gauge, material } }) => {
    const by = `${change > 0 ? '+' : ''}${sayLength(change, unit)}`
    return `${title} is corrected to 20 °C by ${by}: part ${degrees(part)}, gauge ${degrees(gauge)}, `
      + `${materials[material].title.toLowerCase()}.`
  }).join(' ')
}

/** Thousandths of a °C with one decimal, or as many as were typed. */
function degrees(thousandths: number): string {
  const text = fixed(BigInt(thousandths), 3).replace(/0{1,2}$/, '')
  return `${text} °C`
}
