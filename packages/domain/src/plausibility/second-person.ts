import { defaultJudgeSettings } from '../judging/settings.ts'
import { correctReading, warmthOf } from '../temperature/correct-reading.ts'
import type { Doubt } from './doubt.ts'
import type { PlausibilityNumbers } from './numbers.ts'
import { doubtOfAgreement } from './other-doubts.ts'
import { passesOf } from './passes-around.ts'
import { countingOf, type KnownPass, type Surroundings, type TakenValue } from './taken-value.ts'

/** A reading at 20 °C where that is known, with its expanded uncertainty. */
interface Compared {
  readonly by: string
  readonly value: number
  readonly expanded: number
}

/**
 * What somebody else read of the same thing is held against the value: it asks for a third reading when the two differ by
 * more than their joint uncertainty. A third reading that bears out either of two that differ is not asked about.
 */
export function doubtsOfSecondPerson(taken: TakenValue, around: Surroundings, numbers: PlausibilityNumbers): Doubt[] {
  const before = readBefore(taken, around)
  const rival = before.find(({ by }) => by !== taken.by)
  if (rival === undefined) return []
  const own = { by: taken.by, ...compared(taken.value, taken.warmth, taken.standardUncertainty) }
  const differ = (one: Compared, other: Compared) => doubtOfAgreement(one, other, numbers)
  const isBorneOut = before.some((one) => differ(one, own) === null && differ(one, rival) !== null)
  const doubt = isBorneOut ? null : differ(rival, own)
  return doubt === null ? [] : [doubt]
}

/** The same point in the passes before, as long as no metal came off since; the latest first. */
function readBefore(taken: TakenValue, around: Surroundings): readonly Compared[] {
  if (taken.isSetOnMate || mayBeCut(taken, around)) return []
  const earlier = passesOf(taken.definition, around)
    .filter(({ number }) => number < taken.passNumber)
    .toSorted((one, other) => other.number - one.number)
  const elsewhere = earlier.findIndex(({ operationKey }) => operationKey !== around.operation.key)
  return earlier.slice(0, elsewhere < 0 ? earlier.length : elsewhere)
    .filter((pass) => isComparable(pass, taken))
    .flatMap((pass) => countingOf(pass)
      .filter(({ point }) => point === taken.point)
      .map(({ by, value }) => ({ by, ...compared(value, warmthOf(pass), pass.standardUncertainty) })))
}

/**
 * Between two passes of a step that machines anything may have come off, and when engines are put together gaps are filed:
 * sizes are not.
 */
function mayBeCut({ definition }: TakenValue, { operation: { stage } }: Surroundings): boolean {
  const isSize = definition.shape === 'hole' || definition.shape === 'shaft'
  return stage === 'machining' || (!isSize && (stage === 'fitting' || stage === 'assembly'))
}

function isComparable({ isVoid, setOn, state }: KnownPass, taken: TakenValue): boolean {
  return !isVoid && setOn === null && state.length === taken.state.length && state.every((one) => taken.state.includes(one))
}

function compared(value: number, warmth: TakenValue['warmth'], standardUncertainty: number): Omit<Compared, 'by'> {
  return {
    value: warmth?.material ? correctReading(value, { ...warmth, material: warmth.material }) : value,
    expanded: defaultJudgeSettings.coverageFactor * standardUncertainty,
  }
}
