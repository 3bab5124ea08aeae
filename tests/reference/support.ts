import {
  judge, measurementsOf, parseLength, type FeatureDefinition, type Guard, type LengthUnit, type RemedyRule,
  type Requirement, type Verdict,
} from '../../packages/domain/src/index.ts'

/**
 * A hole in a place of its own and the shaft that goes in, one point each: enough to judge a published fit.
 */
const hole: FeatureDefinition = {
  place: 'rod/1', feature: 'bushing', title: 'Bushing of rod 1', shape: 'hole', quantity: 'length', nominal: null,
  state: [], points: [{ key: 'only', station: 'only', axis: 'only' }],
}
const shaft: FeatureDefinition = { ...hole, place: 'piston-pin/1', feature: 'diameter', title: 'Pin 1', shape: 'shaft' }

export interface PairToJudge {
  readonly unit: LengthUnit
  /** Limits of the clearance, as text in `unit`; a negative clearance is an interference. */
  readonly limits: { readonly low: string; readonly high: string; readonly target?: string }
  readonly guard?: Guard
  readonly remedyLow?: RemedyRule['action']
}

function requirementOf({ unit, limits, guard, remedyLow }: PairToJudge): Requirement {
  return {
    key: 'fit/1', fit: 'fit', title: 'Fit', position: 1, quantity: 'length',
    measurand: { kind: 'clearance', hole, shaft, pairing: 'overall' },
    limits: {
      low: parseLength(limits.low, unit), high: parseLength(limits.high, unit),
      target: limits.target === undefined ? null : parseLength(limits.target, unit), adviceLow: null, adviceHigh: null,
    },
    guard: guard ?? { kind: 'none' }, critical: false,
    remedy: { low: remedyLow === undefined ? null : { action: remedyLow, feature: hole, words: '' }, high: null },
    why: { rule: 'fit', revision: 1, level: 'starter', formula: '', worked: [], source: '' },
  }
}

const placed = [{ place: hole.place, partId: 'rod' }, { place: shaft.place, partId: 'pin' }]
const context = { number: 1, state: [], setOn: null }

/** Judges a hole and a shaft measured apart, each with its own standard uncertainty in nanometres. */
export function judgePair(
  pair: PairToJudge, holeSize: string, shaftSize: string, uncertainty: { hole: number; shaft: number } = { hole: 0, shaft: 0 },
): Verdict {
  const reading = (value: string, id: string) => [{ id, point: 'only', value: parseLength(value, pair.unit) }]
  const passes = [
    { ...context, partId: 'rod', feature: hole.feature, standardUncertainty: uncertainty.hole, readings: reading(holeSize, 'h') },
    { ...context, partId: 'pin', feature: shaft.feature, standardUncertainty: uncertainty.shaft, readings: reading(shaftSize, 's') },
  ]
  return judge(requirementOf(pair), measurementsOf(placed, passes), [hole, shaft])
}

/** Judges clearances read with a gauge that was set on the shaft itself: one uncertainty for all of it. */
export function judgeClearance(pair: PairToJudge, clearance: string, standardUncertainty: number): Verdict {
  const pass = {
    ...context, partId: 'rod', feature: hole.feature, standardUncertainty,
    setOn: { partId: 'pin', feature: shaft.feature },
    readings: [{ id: 'c', point: 'only', value: parseLength(clearance, pair.unit) }],
  }
  return judge(requirementOf(pair), measurementsOf(placed, [pass]), [hole, shaft])
}
