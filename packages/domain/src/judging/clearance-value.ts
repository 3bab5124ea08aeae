import { DomainError } from '../errors.ts'
import type { FeatureReference } from '../features/feature.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import { placeTitle } from '../features/titles.ts'
import { sizeOf, type Size } from '../measuring/form.ts'
import type { Measurements } from '../measuring/pass.ts'
import { rootSumSquare } from '../measuring/uncertainty.ts'
import { allMissing, countedPass, type CountedPass, type PointValue } from './counted-pass.ts'
import { sizeUnknown } from './feature-value.ts'
import type { Measurand } from './requirement.ts'
import { joinUnmeasured, type Unmeasured, type Value } from './value.ts'

/**
 * Hole less shaft, on both sides: least hole less greatest shaft, and greatest hole less least shaft. A gauge
 * that was set on the mate shows the clearance itself, and with one uncertainty instead of two.
 * @throws DomainError `point-unknown` when pairing is by station and the features share none
 * @formula clearance
 */
export function clearanceValue(
  { hole, shaft, pairing }: Extract<Measurand, { kind: 'clearance' }>,
  measurements: Measurements,
  features: FeatureIndex,
): Value {
  const holePass = countedPass(hole, measurements, features)
  if (holePass.kind === 'counted' && holePass.pass.setOn !== null) {
    return clearanceAsRead(holePass, shaft, measurements)
  }
  const shaftPass = countedPass(shaft, measurements, features)
  if (shaftPass.kind === 'counted' && shaftPass.pass.setOn !== null) {
    return clearanceAsRead(shaftPass, hole, measurements)
  }
  if (holePass.kind === 'not-measured' || shaftPass.kind === 'not-measured') {
    return joinUnmeasured([holePass, shaftPass].filter((part): part is Unmeasured => part.kind === 'not-measured'))
  }
  const [least, greatest] = pairing === 'overall'
    ? spanOfSizes(holePass.size, shaftPass.size)
    : spanByStation(holePass, shaftPass)
  return {
    kind: 'measured',
    least,
    greatest,
    standardUncertainty: rootSumSquare(holePass.pass.standardUncertainty, shaftPass.pass.standardUncertainty),
    readings: [...holePass.values, ...shaftPass.values].map(({ id }) => id),
  }
}

function clearanceAsRead(counted: CountedPass, mate: FeatureReference, measurements: Measurements): Value {
  const { definition, pass, values, size } = counted
  if (pass.setOn?.feature !== mate.feature) return sizeUnknown(counted)
  if (pass.setOn.partId !== measurements.partAt(mate.place)) {
    return allMissing(
      definition,
      `${definition.title}: the gauge was set on another part than the one now in ${placeTitle(mate.place)}. `
        + 'Set it on this one and measure again.',
    )
  }
  const { least, greatest } = size
  return {
    kind: 'measured', least, greatest,
    standardUncertainty: pass.standardUncertainty,
    readings: values.map(({ id }) => id),
  }
}

function spanOf(holes: readonly PointValue[], shafts: readonly PointValue[]): [number, number] {
  return spanOfSizes(sizeOf(holes.map(({ value }) => value)), sizeOf(shafts.map(({ value }) => value)))
}

function spanOfSizes(hole: Size, shaft: Size): [number, number] {
  return [hole.least - shaft.greatest, hole.greatest - shaft.least]
}

function spanByStation(hole: CountedPass, shaft: CountedPass): [number, number] {
  let least = Infinity
  let greatest = -Infinity
  for (const station of new Set(hole.values.map((value) => value.station))) {
    const shaftsHere = shaft.values.filter((value) => value.station === station)
    if (shaftsHere.length === 0) continue
    const [leastHere, greatestHere] = spanOf(hole.values.filter((value) => value.station === station), shaftsHere)
    least = Math.min(least, leastHere)
    greatest = Math.max(greatest, greatestHere)
  }
  if (least === Infinity) {
    throw new DomainError(
      'point-unknown',
      `${hole.definition.title} and ${shaft.definition.title} share no station to be paired at.`,
    )
  }
  return [least, greatest]
}
