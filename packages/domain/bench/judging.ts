import { judgeAll } from '../src/index.ts'
import { decimalLibrary, sumsByLibrary, unitsLibrary } from './by-library.ts'
import type { Figure } from './figure.ts'
import { measuredShortBlock } from './short-block.ts'
import { mediansTurnByTurn } from './timing.ts'

/** Judging a V8 short block, and the sums of the same sheet through a units and a decimal library, in the same run. */
export function judgingFigures(): Figure[] {
  const block = measuredShortBlock(120)
  const judged = judgeAll(block, block.measurements)
  if (judged.some(({ kind }) => kind === 'not-measured')) throw new Error('The short block must be fully measured.')
  for (const library of [sumsByLibrary(block, unitsLibrary), sumsByLibrary(block, decimalLibrary)]) {
    for (const [kind, lines] of Object.entries(library)) {
      if (judged.filter((verdict) => verdict.kind === kind).length !== lines) throw new Error(`Unequal sums: ${kind}.`)
    }
  }
  const what = `${block.readings} readings, ${block.requirements.length} requirements`

  // turn by turn, so that a busy machine slows all three alike
  const [ours = NaN, byUnits = NaN, byDecimals = NaN] = mediansTurnByTurn(61, 200, [
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
