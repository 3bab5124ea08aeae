import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, NANOMETRES_PER_TENTH } from '../exact/length.ts'
import { starterMagnitudeNumbers, type MagnitudeNumbers } from './magnitude.ts'
import type { ReadingKind } from './reading-context.ts'

type Band = readonly [low: number, high: number]

/**
 * Every number that plausibility goes by. Lengths in nanometres. The shop sets those of `changeable-numbers.ts`; the others
 * are arithmetic, or nothing asks by them yet.
 */
export interface PlausibilityNumbers {
  readonly magnitude: MagnitudeNumbers
  /** A misread turn of a thimble: by how much it is off, and how near to that a value must lie. */
  readonly thimbleTurns: readonly { readonly off: number; readonly near: number }[]
  /** Share of a dial's turn within which a value counts as one turn off. */
  readonly revolutionShare: number
  readonly sign: { readonly flippedWithin: number; readonly typedOff: number }
  readonly neighbour: Partial<Record<ReadingKind, { readonly intake: number; readonly finished: number }>>
  readonly oversizes: readonly number[]
  readonly nominal: { readonly intake: number; readonly finished: number; readonly block: number }
  readonly growth: { readonly afterCut: number; readonly overBlueprint: number }
  readonly range: Partial<Record<ReadingKind, Band>>
  /** Ring gap in millionths of the bore: 0.003 in per inch is 3,000. */
  readonly ringGapPerBore: Band
  readonly set: { readonly offset: number; readonly equalWithin: number; readonly equalFrom: number; readonly run: number }
  readonly rodRatio: { readonly ask: Band; readonly block: Band }
  /** Cubic millimetres, milligrams, millinewton metres. */
  readonly chamber: Band
  readonly pistonMass: Band
  readonly torque: Band
  readonly torqueRatios: readonly Band[]
  /** Ounces for grams, and newtons for pounds-force. */
  readonly ounceRatio: Band
  readonly poundForceRatio: Band
  /** Thousandths of a °C, and the percentage of a tolerance that an uncorrected error may take. */
  readonly temperature: { readonly part: Band; readonly difference: number; readonly tolerancePercent: number }
  readonly doubleSendMilliseconds: number
  /** How far a comparator's zero may have moved before what it read is void, in nanometres. */
  readonly zeroDrift: number
  /** By how many combined U two people's readings may differ. */
  readonly agreement: number
}

const tenths = (count: number): number => count * NANOMETRES_PER_TENTH
const thousandths = (count: number): number => (count * NANOMETRES_PER_INCH) / 1_000
const microns = (count: number): number => (count * NANOMETRES_PER_MILLIMETRE) / 1_000

/** Starter numbers, from memory or derived: common practice, no source. */
export const starterPlausibilityNumbers: PlausibilityNumbers = {
  magnitude: starterMagnitudeNumbers,
  thimbleTurns: [
    ...[25, 50, 100].map((off) => ({ off: thousandths(off), near: thousandths(2) })),
    { off: microns(500), near: microns(40) },
  ],
  revolutionShare: 0.05,
  sign: { flippedWithin: tenths(3), typedOff: tenths(6) },
  neighbour: {
    bore: { intake: tenths(30), finished: tenths(8) },
    journal: { intake: tenths(6), finished: tenths(6) },
    pin: { intake: tenths(3), finished: tenths(3) },
    bushing: { intake: tenths(3), finished: tenths(3) },
  },
  oversizes: [0, ...[10, 20, 30, 40, 60].map(thousandths), ...[250, 500, 750, 1_000].map(microns)],
  nominal: { intake: thousandths(15), finished: thousandths(6), block: thousandths(80) },
  growth: { afterCut: tenths(2), overBlueprint: thousandths(2) },
  range: {
    'ring-side-clearance': [tenths(5), thousandths(6)],
    'end-play': [thousandths(1), thousandths(20)],
    'rod-side-clearance': [thousandths(3), thousandths(40)],
    'bolt-stretch': [thousandths(2), thousandths(10)],
    'oil-clearance': [tenths(3), thousandths(6)],
    'deck-clearance': [thousandths(-30), thousandths(60)],
  },
  ringGapPerBore: [3_000, 10_000],
  set: { offset: tenths(5), equalWithin: tenths(1), equalFrom: 4, run: 8 },
  rodRatio: { ask: [1.35, 2.2], block: [1.2, 2.8] },
  chamber: [15_000, 150_000],
  pistonMass: [150_000, 1_200_000],
  // 5 to 250 lbf·ft
  torque: [6_779, 338_954],
  // pound-inches for pound-feet (12), newton metres for pound-feet (1.356), each within 2 %
  torqueRatios: [[11.76, 12.24], [1.329, 1.383]],
  // 28.35 g to the ounce, 4.448 N to the pound-force, each within 2 %
  ounceRatio: [27.78, 28.92],
  poundForceRatio: [4.359, 4.537],
  temperature: { part: [10_000, 35_000], difference: 2_000, tolerancePercent: 10 },
  doubleSendMilliseconds: 150,
  zeroDrift: tenths(1),
  agreement: 1.5,
}
