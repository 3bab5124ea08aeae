import { comparisonError, type WarmBody } from '../temperature/expansion.ts'
import { ask, block, isIn, type Doubt } from './doubt.ts'
import type { PlausibilityNumbers } from './numbers.ts'

/** A rod's length over the stroke. */
export function doubtOfRodRatio(rodLength: number, stroke: number, { rodRatio }: PlausibilityNumbers): Doubt | null {
  const ratio = rodLength / stroke
  const sentence = `A rod ${ratio.toFixed(2)} strokes long is unusual: centre to centre, and the whole stroke?`
  if (!isIn(ratio, rodRatio.block)) return block('rod-ratio', sentence)
  return isIn(ratio, rodRatio.ask) ? null : ask('rod-ratio', sentence)
}

/** A chamber volume (mm³), piston mass (mg) or torque (mN·m) outside what engines have. */
export function doubtOfQuantity(
  quantity: 'chamber' | 'pistonMass' | 'torque', value: number, numbers: PlausibilityNumbers,
): Doubt | null {
  return isIn(value, numbers[quantity]) ? null : ask('range', 'This is unusual for an engine: is the unit right?')
}

/**
 * A torque in another unit than the specified one: twelve times (pound-inches) or 1.356 times (newton
 * metres).
 */
export function doubtOfTorqueUnit(value: number, specified: number, { torqueRatios }: PlausibilityNumbers): Doubt | null {
  const ratio = value > specified ? value / specified : specified / value
  return torqueRatios.some((band) => isIn(ratio, band))
    ? ask('torque-unit', 'This is the specified torque in another unit: pound-feet, pound-inches or newton metres?')
    : null
}

/** Part and gauge at a final reading; tolerance and size in nanometres. */
export interface SoakContext {
  readonly part: WarmBody
  readonly gauge: WarmBody
  readonly size: number
  readonly tolerance: number
  /** Whether the reading was corrected to 20 °C. */
  readonly isCorrected: boolean
}

/** A part too cold or warm, not soaked with its gauge, or read with an error that the tolerance feels. */
export function doubtsOfSoak(
  { part, gauge, size, tolerance, isCorrected }: SoakContext, { temperature }: PlausibilityNumbers,
): Doubt[] {
  const doubts: Doubt[] = []
  if (!isIn(part.temperature, temperature.part)) {
    doubts.push(ask('part-temperature', 'The part is too cold or too warm to be measured: let it come to the room.'))
  }
  if (Math.abs(part.temperature - gauge.temperature) > temperature.difference) {
    const allowed = temperature.difference / 1_000
    doubts.push(ask('soak', `Part and gauge differ by more than ${allowed} °C: let them soak together.`))
  }
  const error = Math.abs(comparisonError(size, part, gauge))
  if (!isCorrected && error > (temperature.tolerancePercent * tolerance) / 100) {
    doubts.push(ask('expansion', 'Expansion alone takes a good part of the tolerance: soak, or correct to 20 °C.'))
  }
  return doubts
}

/** A value typed for another number than that of the part whose tag was scanned. */
export function doubtOfPosition(typed: number, scanned: number): Doubt | null {
  return typed === scanned
    ? null
    : block('position', `This is number ${typed}, and the scanned tag is of number ${scanned}: which part is on the bench?`)
}

/** One key stroke that filled two cells. */
export function doubtOfDoubleSend(
  first: number, second: number, milliseconds: number, { doubleSendMilliseconds }: PlausibilityNumbers,
): Doubt | null {
  return first === second && milliseconds <= doubleSendMilliseconds
    ? ask('double-send', 'The same value came twice at once: is the second one meant?')
    : null
}

/** Two people's readings of one thing, with the expanded uncertainty of each. */
export function doubtOfAgreement(
  one: { readonly value: number; readonly expanded: number },
  other: { readonly value: number; readonly expanded: number },
  { agreement }: PlausibilityNumbers,
): Doubt | null {
  return Math.abs(one.value - other.value) <= agreement * Math.hypot(one.expanded, other.expanded)
    ? null
    : ask('agreement', 'The two readings differ by more than their uncertainty: take a third; all of them are kept.')
}
