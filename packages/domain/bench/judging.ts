import { judgeAll, type Verdict } from '../src/index.ts'
import { sumsByLibrary } from './by-library.ts'
import type { Figure } from './figure.ts'
import { decimalLibrary, unitsLibrary, type Arithmetic } from './library-arithmetic.ts'
import { measuredShortBlock, type MeasuredShortBlock } from './short-block.ts'
import { mediansTurnByTurn } from './timing.ts'

/** Judging a V8 short block, and the sums of the same sheet through a units and a decimal library, in the same run. */
export function judgingFigures(): Figure[] {
  const block = measuredShortBlock(120)
  const verdicts = judgeAll(block, block.measurements)
  refuseUnequal(verdicts, block, unitsLibrary)
  refuseUnequal(verdicts, block, decimalLibrary)
  const what = `${block.readings} readings, ${block.requirements.length} requirements`

  const [ours = NaN, byUnits = NaN, byDecimals = NaN] = mediansTurnByTurn(31, 5, [
    () => judgeAll(block, block.measurements),
    () => sumsByLibrary(block, unitsLibrary),
    () => sumsByLibrary(block, decimalLibrary),
  ])
  return [
    { figure: `judge a V8 short block: ${what}`, value: ours, unit: 'ms', limit: { kind: 'at most', value: 1 }, comparedWith: null },
    {
      figure: 'sums of the same sheet by js-quantities', value: byUnits / ours, unit: 'times slower',
      limit: { kind: 'at least', value: 50 }, comparedWith: `${byUnits.toPrecision(3)} ms against ${ours.toPrecision(3)} ms`,
    },
    {
      figure: 'sums of the same sheet by decimal.js', value: byDecimals / ours, unit: 'times slower',
      limit: { kind: 'at least', value: 5 }, comparedWith: `${byDecimals.toPrecision(3)} ms against ${ours.toPrecision(3)} ms`,
    },
  ]
}

/** Speeds are only compared where every figure of every line is the same, but for the last figures of a binary fraction. */
function refuseUnequal<Value>(verdicts: readonly Verdict[], block: MeasuredShortBlock, arithmetic: Arithmetic<Value>): void {
  const lines = sumsByLibrary(block, arithmetic)
  const isSame = (ours: number | null, theirs: number) => ours !== null && Math.abs(ours - theirs) <= 1e-6 * Math.max(1, Math.abs(ours))
  for (const [at, verdict] of verdicts.entries()) {
    const { kind, least, greatest, uncertainty, probability, isAdvised, change } = lines[at]!
    const { nanometres } = arithmetic
    const isEqual = verdict.kind === kind
      && isSame(verdict.least, nanometres(least)) && isSame(verdict.greatest, nanometres(greatest))
      && isSame(verdict.uncertainty, nanometres(uncertainty)) && isSame(verdict.probability, probability)
      && (verdict.advice !== null) === isAdvised
      && (verdict.remedy === null ? change === null : change !== null && isSame(verdict.remedy.amount, nanometres(change)))
    if (!isEqual) throw new Error(`Unequal sums: ${verdict.requirement}.`)
  }
}
