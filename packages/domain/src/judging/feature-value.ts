import { DomainError } from '../errors.ts'
import { round } from '../exact/rounding.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import { meanOf, outOfRound, spanOf, taper, type Span } from '../measuring/form.ts'
import type { Measurements } from '../measuring/pass.ts'
import { rootSumSquare } from '../measuring/uncertainty.ts'
import { allMissing, countedPass, placedValues, type CountedPass } from './counted-pass.ts'
import type { FeelerInterval } from './feeler-zone.ts'
import type { Measurand, Reducer } from './requirement.ts'
import type { MeasuredValue, Unmeasured, Value } from './value.ts'

/**
 * Reducers that are a difference of two readings of one pass: what the gauge was set on cancels out of them.
 */
const differences: readonly Reducer[] = ['range', 'out-of-round', 'taper']

export function isDifference(reducer: Reducer): boolean {
  return differences.includes(reducer)
}

/**
 * The value of one feature: its size by the reducer, or its form. A difference of two readings carries √2 of
 * the uncertainty of one; a mean carries that of one, because a gauge that is off is off at every point.
 * @throws DomainError `point-unknown` when the feature has not the points that the reducer needs
 */
export function featureValue(
  { feature, reducer }: Extract<Measurand, { kind: 'feature' }>,
  measurements: Measurements,
  features: FeatureIndex,
): Value {
  const counted = countedPass(feature, measurements, features)
  if (counted.kind === 'not-measured') return counted
  if (counted.pass.setOn !== null && !isDifference(reducer)) return sizeUnknown(counted)
  if (counted.blades !== null) return feelerValue(counted, counted.blades, reducer)
  const { least, greatest } = reduce(counted, reducer)
  const { standardUncertainty } = counted.pass
  return {
    kind: 'measured',
    ...correctionOf(counted, !isDifference(reducer)),
    least,
    greatest,
    standardUncertainty: isDifference(reducer)
      ? rootSumSquare(standardUncertainty, standardUncertainty)
      : standardUncertainty,
    readings: counted.readings,
  }
}

/**
 * Feelers tell two blades and no size: enough for a limit of the least, the greatest or each gap, and for nothing that
 * is reckoned with the size itself.
 */
function feelerValue(counted: CountedPass, blades: readonly FeelerInterval[], reducer: Reducer): Value {
  if (reducer !== 'each' && reducer !== 'least' && reducer !== 'greatest') return feelersSayNoSize(counted)
  const narrowest = { enters: Math.min(...blades.map(({ enters }) => enters)), stops: leastOf(blades.map(({ stops }) => stops)) }
  const widest = { enters: Math.max(...blades.map(({ enters }) => enters)), stops: greatestOf(blades.map(({ stops }) => stops)) }
  const [low, high] = [reducer === 'greatest' ? widest : narrowest, reducer === 'least' ? narrowest : widest]
  return {
    kind: 'measured', blades: { low, high }, least: low.enters, greatest: high.stops ?? high.enters,
    standardUncertainty: counted.pass.standardUncertainty,
    readings: counted.readings,
  }
}

/** Open above means that nothing is known there. */
function leastOf(stops: readonly (number | null)[]): number | null {
  const known = stops.filter((stop) => stop !== null)
  return known.length === 0 ? null : Math.min(...known)
}

function greatestOf(stops: readonly (number | null)[]): number | null {
  return stops.includes(null) ? null : Math.max(...stops.map((stop) => stop ?? 0))
}

export function feelersSayNoSize({ definition }: CountedPass): Unmeasured {
  return allMissing(definition, `${definition.title}: feelers tell two blades and no size. Measure it with another gauge.`)
}

/** By how much the middle of a feature was moved to 20 °C; nothing to tell where it was taken as read. */
export function correctionOf({ definition, pass, values }: CountedPass, counts: boolean): Pick<MeasuredValue, 'corrected'> {
  const { warmth } = pass
  if (!counts || warmth === null || warmth === undefined || pass.setOn !== null) return {}
  const read = pass.readings.filter(({ point }) => definition.points.some(({ key }) => key === point))
  const mean = read.reduce((sum, { value }) => sum + value, 0) / read.length
  return { corrected: [{ title: definition.title, warmth, change: round(meanOf(values) - mean, 'half-even') }] }
}

/** A gauge set on the mate shows clearances: the size of the feature itself stays unknown. */
export function sizeUnknown({ definition }: CountedPass): Unmeasured {
  return allMissing(
    definition,
    `${definition.title}: its latest readings are clearances, with the gauge set on the mating part. Measure its size.`,
  )
}

function reduce(counted: CountedPass, reducer: Reducer): Span {
  const span = spanOf(counted.values)
  switch (reducer) {
    case 'each': return span
    case 'least': return oneFigure(span.least)
    case 'greatest': return oneFigure(span.greatest)
    case 'mean': return oneFigure(meanOf(counted.values))
    case 'range': return oneFigure(span.greatest - span.least)
    case 'out-of-round':
    case 'taper': return oneFigure(formBy(counted, reducer))
  }
}

function oneFigure(value: number): Span {
  return { least: value, greatest: value }
}

/** The one size of a feature that a reducer names. */
export function sizeBy({ values }: CountedPass, reducer: 'least' | 'greatest' | 'mean'): number {
  return reducer === 'mean' ? meanOf(values) : spanOf(values)[reducer]
}

function formBy(counted: CountedPass, reducer: 'out-of-round' | 'taper'): number {
  const readings = placedValues(counted)
  const form = reducer === 'taper' ? taper(readings) : outOfRound(readings)
  if (form === null) {
    throw new DomainError('point-unknown', `${counted.definition.title} has too few points to tell its ${reducer}.`)
  }
  return form.value
}
