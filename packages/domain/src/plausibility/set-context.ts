import { featureKey } from '../features/feature.ts'
import { likeFeatures, passBefore, passHere } from './passes-around.ts'
import type { PlausibilityNumbers } from './numbers.ts'
import { readingKindOf } from './reading-kind-of.ts'
import type { SetContext } from './set-doubt.ts'
import { countingOf, type Surroundings, type TakenValue } from './taken-value.ts'

/** Kinds of reading that scatter: gaps told by blades and torques of a wrench are alike by right. */
const scattering: readonly string[] = ['bore', 'housing', 'journal', 'pin', 'bushing', 'piston']

/**
 * The sets that a value is doubted in: all of its like when it completes them, and a run of one figure as often as it is
 * so long. Empty where sets say nothing.
 */
export function setContextsOf(taken: TakenValue, around: Surroundings, { set }: PlausibilityNumbers): readonly SetContext[] {
  if (!scattering.includes(readingKindOf(taken.definition, taken.isSetOnMate))) return []
  const cells = cellsInOrder(taken, around)
  const values = cells.flatMap(({ value }) => value ?? [])
  const isComplete = cells.every(({ value }) => value !== null)
  const run = runEndingAt(cells)
  if (isComplete) return [{ values, unmachinedBefore: unmachinedBefore(taken, around) }]
  return run > 0 && run % set.run === 0 ? [{ values: Array<number>(set.run).fill(taken.value), unmachinedBefore: null }] : []
}

interface SetCell {
  readonly value: number | null
  readonly isTaken: boolean
}

function cellsInOrder(taken: TakenValue, around: Surroundings): readonly SetCell[] {
  return likeFeatures(taken.definition, around).flatMap((feature) => {
    const pass = passHere(feature, taken, around)
    const values = new Map((pass === null ? [] : countingOf(pass)).map(({ point, value }) => [point, value]))
    const isOwn = featureKey(feature) === featureKey(taken.definition)
    return feature.points.map(({ key }) => {
      const isTaken = isOwn && key === taken.point
      return { value: isTaken ? taken.value : values.get(key) ?? null, isTaken }
    })
  })
}

/** How many cells in a row, this one the last of them, hold its figure. */
function runEndingAt(cells: readonly SetCell[]): number {
  const end = cells.findIndex(({ isTaken }) => isTaken)
  const value = cells[end]?.value ?? null
  let run = 0
  while (run <= end && value !== null && cells[end - run]?.value === value) run += 1
  return run
}

/** The set as it was measured before at this step, where no metal came off between; null where there is none. */
function unmachinedBefore(taken: TakenValue, around: Surroundings): readonly number[] | null {
  if (around.operation.stage === 'machining') return null
  const before = likeFeatures(taken.definition, around).flatMap((feature) => {
    const now = passHere(feature, taken, around)
    const number = featureKey(feature) === featureKey(taken.definition) ? taken.passNumber : now?.number ?? 0
    const pass = passBefore(feature, number, around)
    return pass === null || pass.operationKey !== around.operation.key ? [] : [countingOf(pass).map(({ value }) => value)]
  })
  return before.length === likeFeatures(taken.definition, around).length ? before.flat() : null
}
