import { sayLength } from '../exact/format-length.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import { correctReading, warmthOf, type TemperatureTold } from '../temperature/correct-reading.ts'
import { materials } from '../temperature/material.ts'
import { sayDegrees } from '../temperature/say-degrees.ts'
import { hasDrifted, type ZeroCheck } from './zero-check.ts'

/** What a pass tells of how it was taken, lengths in nanometres, temperatures in thousandths of a °C. */
export interface PassAsTaken {
  /** What a comparator was set to zero on. */
  readonly setting: { readonly size: number; readonly temperature: number | null } | null
  readonly temperatures: TemperatureTold['temperatures']
  readonly material: TemperatureTold['material']
  /** The latest check of its gauge's zero. */
  readonly zero: (ZeroCheck & { readonly by: string }) | null
  /** Its gauge was found to have drifted. */
  readonly isVoid: boolean
  readonly readings: readonly { readonly value: number }[]
}

/** How a pass was taken, for whoever reads the record years later: one phrase each of setting, warmth and zero. */
export function howMeasured(pass: PassAsTaken, unit: ReaderUnit): readonly string[] {
  return [settingWords(pass, unit), ...warmthWords(pass, unit), zeroWords(pass, unit)].filter((words) => words !== null)
}

function settingWords({ setting }: PassAsTaken, unit: ReaderUnit): string | null {
  if (setting === null) return null
  const warm = setting.temperature === null ? '' : ` at ${sayDegrees(setting.temperature)}`
  return `gauge set to zero on ${sayLength(setting.size, unit)}${warm}`
}

function warmthWords(pass: PassAsTaken, unit: ReaderUnit): readonly string[] {
  if (pass.temperatures === null) return []
  const told = `part ${sayDegrees(pass.temperatures.part)}, room ${sayDegrees(pass.temperatures.room)}`
  const warmth = warmthOf(pass)
  const [first] = pass.readings
  if (warmth === null || first === undefined) return [`${told}, taken as read`]
  const change = correctReading(first.value, warmth) - first.value
  const by = `${change > 0 ? '+' : ''}${sayLength(change, unit)}`
  return [`${told}, corrected to 20 °C by ${by} as ${materials[warmth.material].title.toLowerCase()}`]
}

function zeroWords({ setting, zero, isVoid }: PassAsTaken, unit: ReaderUnit): string | null {
  if (zero === null) return setting === null ? null : 'zero not checked afterwards'
  const off = `${sayLength(Math.abs(zero.deviation), unit)} off, ${sayLength(zero.allowed, unit)} allowed, checked by ${zero.by}`
  if (hasDrifted(zero)) return `zero drifted, does not count: ${off}`
  return isVoid ? `zero drifted before, does not count; now ${off}` : `zero good: ${off}`
}
