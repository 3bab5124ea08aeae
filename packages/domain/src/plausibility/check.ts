import type { ReaderUnit } from '../exact/length-unit.ts'
import { blocksFirst, type Doubt } from './doubt.ts'
import { starterPlausibilityNumbers, type PlausibilityNumbers } from './numbers.ts'
import {
  doubtOfAgreement, doubtOfDoubleSend, doubtOfPosition, doubtOfQuantity, doubtOfRodRatio, doubtOfTorqueUnit,
  doubtsOfSoak, type SoakContext,
} from './other-doubts.ts'
import type { ReadingContext } from './reading-context.ts'
import { doubtsOfReading } from './reading-doubt.ts'
import { doubtsOfSet, type SetContext } from './set-doubt.ts'

/**
 * What can be doubted: a reading, a set of them, a figure of the engine, and how and by whom it was taken.
 */
export type PlausibilitySubject =
  | { readonly kind: 'reading'; readonly reading: ReadingContext }
  | { readonly kind: 'set'; readonly set: SetContext }
  | { readonly kind: 'rod-ratio'; readonly rodLength: number; readonly stroke: number }
  | { readonly kind: 'quantity'; readonly quantity: 'chamber' | 'pistonMass' | 'torque'; readonly value: number }
  | { readonly kind: 'torque'; readonly value: number; readonly specified: number }
  | { readonly kind: 'soak'; readonly soak: SoakContext }
  | { readonly kind: 'position'; readonly typed: number; readonly scanned: number }
  | { readonly kind: 'double-send'; readonly first: number; readonly second: number; readonly milliseconds: number }
  | {
      readonly kind: 'second-person'
      readonly one: { readonly value: number; readonly expanded: number }
      readonly other: { readonly value: number; readonly expanded: number }
    }

/**
 * Whether what was typed can be so: every doubt about it, those that block first. Starter numbers are common
 * practice from memory; the shop sets its own. Nothing is corrected: the first value stays as typed.
 * @param unit in which the sentences name lengths
 */
export function checkPlausibility(
  subject: PlausibilitySubject,
  unit: ReaderUnit,
  numbers: PlausibilityNumbers = starterPlausibilityNumbers,
): Doubt[] {
  return blocksFirst(doubtsOf(subject, unit, numbers).filter((doubt) => doubt !== null))
}

function doubtsOf(
  subject: PlausibilitySubject, unit: ReaderUnit, numbers: PlausibilityNumbers,
): readonly (Doubt | null)[] {
  switch (subject.kind) {
    case 'reading': return doubtsOfReading(subject.reading, unit, numbers)
    case 'set': return doubtsOfSet(subject.set, numbers)
    case 'rod-ratio': return [doubtOfRodRatio(subject.rodLength, subject.stroke, numbers)]
    case 'quantity': return [doubtOfQuantity(subject.quantity, subject.value, numbers)]
    case 'torque': return [doubtOfTorqueUnit(subject.value, subject.specified, numbers)]
    case 'soak': return doubtsOfSoak(subject.soak, numbers)
    case 'position': return [doubtOfPosition(subject.typed, subject.scanned)]
    case 'double-send': return [doubtOfDoubleSend(subject.first, subject.second, subject.milliseconds, numbers)]
    case 'second-person': return [doubtOfAgreement(subject.one, subject.other, numbers)]
  }
}
