import { DomainError } from '../errors.ts'
import type { FeatureDefinition, FeatureReference, Neighbour } from '../features/feature.ts'
import { featureOf, pointKey, type FeatureIndex } from '../features/feature-index.ts'
import { measuringStateTitles, placeTitle } from '../features/titles.ts'
import { changedNeighbour } from '../measuring/beside.ts'
import type { FormReading } from '../measuring/form.ts'
import type { CountingReading, FeaturePass, Measurements } from '../measuring/pass.ts'
import { correctReading } from '../temperature/correct-reading.ts'
import type { FeelerInterval } from './feeler-zone.ts'
import type { Unmeasured } from './value.ts'

/** A pass that counts: the latest one, full, taken in the state that the feature asks for and beside what still is there. */
export interface CountedPass {
  readonly kind: 'counted'
  readonly definition: FeatureDefinition
  readonly pass: FeaturePass
  /**
   * What was read, one for each point of the definition, in its order, at 20 °C where the pass says how warm part and
   * gauge were; and the ids of those readings.
   */
  readonly values: readonly number[]
  readonly readings: readonly string[]
  /** The same as intervals where feelers were used, a plain figure among them as an interval of nothing; null without. */
  readonly blades: readonly FeelerInterval[] | null
}

/** The values together with where on the feature each was taken. */
export function placedValues({ definition, values }: CountedPass): FormReading[] {
  return values.map((value, at) => {
    const { station, axis } = definition.points[at]!
    return { station, axis, value }
  })
}

/**
 * Finds the pass that a verdict may rest on. Only the latest counts: readings of an earlier one belong to
 * metal that may be gone. A pass with gaps, or taken in another state or beside other
 * parts, says nothing yet.
 * @throws DomainError `feature-unknown` when the plan defines no such feature, `value-out-of-range` for an
 *   impossible u
 */
export function countedPass(
  reference: FeatureReference,
  measurements: Measurements,
  features: FeatureIndex,
): CountedPass | Unmeasured {
  const definition = featureOf(features, reference)
  const pass = measurements.latestPass(reference)
  if (pass === null) {
    const isEmpty = measurements.partAt(reference.place) === null
    return allMissing(definition, isEmpty ? `No part is in ${placeTitle(reference.place)}.` : null)
  }
  if (!(pass.standardUncertainty >= 0 && pass.standardUncertainty < Infinity)) {
    throw new DomainError('value-out-of-range', `${pass.standardUncertainty} is not an uncertainty.`)
  }
  if (pass.isVoid === true) {
    return allMissing(
      definition,
      `${definition.title}: the gauge’s zero had drifted when it was checked, so pass ${pass.number} does not count. Measure it again.`,
    )
  }
  const lacking = definition.state.filter((state) => !pass.state.includes(state))
  if (lacking.length > 0) {
    const states = lacking.map((state) => measuringStateTitles[state]).join(' and ')
    return allMissing(definition, `${definition.title}: it was not measured with ${states}. Measure it again so.`)
  }
  const changed = changedNeighbour(definition, pass, measurements)
  if (changed !== null) return allMissing(definition, sayChange(definition, changed, features))
  return whenFull(definition, pass)
}

function sayChange({ title }: FeatureDefinition, { place, feature }: Neighbour, features: FeatureIndex): string {
  const neighbour = feature === null ? null : features.get(place)?.get(feature)?.title
  return neighbour
    ? `${title}: ${neighbour} was measured anew, or is of another part, since. Measure it again.`
    : `${title}: it was measured with another part as ${placeTitle(place)}. Measure it again.`
}

function whenFull(definition: FeatureDefinition, pass: FeaturePass): CountedPass | Unmeasured {
  const values: number[] = []
  const readings: string[] = []
  const missing: string[] = []
  const blades: FeelerInterval[] = []
  let hasBlades = false
  const warmth = isCorrected(definition, pass) ? pass.warmth : null
  let index = 0
  for (const { key } of definition.points) {
    const reading = readingAt(pass.readings, key, index)
    index += 1
    if (reading === undefined) {
      missing.push(pointKey(definition, key))
      continue
    }
    const value = warmth === null ? reading.value : correctReading(reading.value, warmth)
    values.push(value)
    readings.push(reading.id)
    hasBlades ||= reading.blades !== undefined
    if (hasBlades) blades[index - 1] = { enters: value, stops: reading.blades === undefined ? value : reading.blades.stops }
  }
  if (missing.length === 0 && values.length > 0) {
    const intervals = hasBlades ? values.map((value, at) => blades[at] ?? { enters: value, stops: value }) : null
    return { kind: 'counted', definition, pass, values, readings, blades: intervals }
  }
  const total = definition.points.length
  const reason = `${definition.title}: ${values.length} of ${total} points are measured in pass ${pass.number}.`
  return { kind: 'not-measured', missing, reasons: [reason] }
}

/** Sizes change with temperature. A clearance read on the mate does too, by what neither temperature tells. */
function isCorrected(
  { quantity }: FeatureDefinition, pass: FeaturePass,
): pass is FeaturePass & { readonly warmth: NonNullable<FeaturePass['warmth']> } {
  return quantity === 'length' && pass.setOn === null && pass.warmth !== null && pass.warmth !== undefined
}

/** The reading of a point. Readings mostly come in the order of the points: that place is looked at first. */
function readingAt(readings: readonly CountingReading[], point: string, index: number): CountingReading | undefined {
  const expected = readings[index]
  return expected?.point === point ? expected : readings.findLast((reading) => reading.point === point)
}

/** A feature of which nothing counts, so that every point is to be measured. */
export function allMissing(definition: FeatureDefinition, reason: string | null): Unmeasured {
  return {
    kind: 'not-measured',
    missing: definition.points.map(({ key }) => pointKey(definition, key)),
    reasons: reason === null ? [] : [reason],
  }
}
