import { DomainError } from '../errors.ts'
import type { FeatureReference } from '../features/feature.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import { placeTitle } from '../features/titles.ts'
import { spanOf, type Span } from '../measuring/form.ts'
import type { Measurements } from '../measuring/pass.ts'
import { rootSumSquare } from '../measuring/uncertainty.ts'
import { allMissing, countedPass, placedValues, type CountedPass } from './counted-pass.ts'
import { correctionOf, feelersSayNoSize, sizeUnknown } from './feature-value.ts'
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
  const withFeelers = [holePass, shaftPass].find(({ blades }) => blades !== null)
  if (withFeelers !== undefined) return feelersSayNoSize(withFeelers)
  const corrected = [holePass, shaftPass].flatMap((counted) => correctionOf(counted, true).corrected ?? [])
  const { least, greatest } = pairing === 'overall'
    ? between(holePass.values, shaftPass.values)
    : betweenByStation(holePass, shaftPass)
  return {
    kind: 'measured',
    least,
    greatest,
    standardUncertainty: rootSumSquare(holePass.pass.standardUncertainty, shaftPass.pass.standardUncertainty),
    readings: [...holePass.readings, ...shaftPass.readings],
    ...(corrected.length > 0 && { corrected }),
  }
}

function clearanceAsRead(counted: CountedPass, mate: FeatureReference, measurements: Measurements): Value {
  const { definition, pass, values, readings } = counted
  if (pass.setOn?.feature !== mate.feature) return sizeUnknown(counted)
  if (pass.setOn.partId !== measurements.partAt(mate.place)) {
    return allMissing(
      definition,
      `${definition.title}: the gauge was set on another part than the one now in ${placeTitle(mate.place)}. `
        + 'Set it on this one and measure again.',
    )
  }
  return { kind: 'measured', ...spanOf(values), standardUncertainty: pass.standardUncertainty, readings }
}

function between(holes: readonly number[], shafts: readonly number[]): Span {
  const [hole, shaft] = [spanOf(holes), spanOf(shafts)]
  return { least: hole.least - shaft.greatest, greatest: hole.greatest - shaft.least }
}

function betweenByStation(hole: CountedPass, shaft: CountedPass): Span {
  const shafts = valuesByStation(shaft)
  const clearances = [...valuesByStation(hole)].flatMap(([station, holesHere]) => {
    const shaftsHere = shafts.get(station)
    if (shaftsHere === undefined) return []
    const { least, greatest } = between(holesHere, shaftsHere)
    return [least, greatest]
  })
  if (clearances.length === 0) {
    throw new DomainError(
      'point-unknown',
      `${hole.definition.title} and ${shaft.definition.title} share no station to be paired at.`,
    )
  }
  return spanOf(clearances)
}

function valuesByStation(counted: CountedPass): ReadonlyMap<string, readonly number[]> {
  const stations = new Map<string, number[]>()
  for (const { station, value } of placedValues(counted)) {
    const here = stations.get(station)
    if (here === undefined) stations.set(station, [value])
    else here.push(value)
  }
  return stations
}
