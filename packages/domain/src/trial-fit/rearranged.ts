import { round } from '../exact/rounding.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import type { FeatureReference, Place } from '../features/feature.ts'
import { countedPass } from '../judging/counted-pass.ts'
import { meanOf } from '../measuring/form.ts'
import { measurementsOf } from '../measuring/pass.ts'
import type { FeaturePass, Measurements, PlacedPart } from '../measuring/pass.ts'
import { numberOf } from './families.ts'
import type { Family } from './families.ts'

/** What is measured of a job, and where its parts sit. */
export interface JobAsMeasured {
  readonly placed: readonly PlacedPart[]
  readonly passes: readonly FeaturePass[]
}

/**
 * What would be measured with parts of one family in other places. Sizes go along with their part. A bearing in place is
 * its housing less two walls: in another housing it is foretold from that one's mean size, as if read beside it.
 * @param partAt the part that would sit in each place that changes
 */
export function rearranged(
  job: JobAsMeasured, family: Family, partAt: ReadonlyMap<Place, string>, index: FeatureIndex,
): Measurements {
  const placed = job.placed.map((one) => ({ ...one, partId: partAt.get(one.place) ?? one.partId }))
  return measurementsOf(placed, family.inHousing === null ? job.passes : foretold(job, family, partAt, index))
}

function foretold(
  { placed, passes }: JobAsMeasured, { inHousing }: Family, partAt: ReadonlyMap<Place, string>, index: FeatureIndex,
): readonly FeaturePass[] {
  const now = measurementsOf(placed, passes)
  const placeNow = new Map(placed.map(({ place, partId }) => [partId, place]))
  const shift = new Map<FeaturePass, number | null>()
  for (const [place, partId] of partAt) {
    const from = placeNow.get(partId)
    if (inHousing === null || from === undefined || from === place) continue
    const own = inHousing(numberOf(from))
    const bore = countedPass(own.bore, now, index)
    if (bore.kind !== 'counted') continue
    const here = meanSize(own.housing, now, index)
    const there = meanSize(inHousing(numberOf(place)).housing, now, index)
    // Without both housings nothing can be foretold.
    shift.set(bore.pass, here === null || there === null ? null : round(there - here, 'half-even'))
  }
  return passes.flatMap((pass) => {
    const by = shift.get(pass)
    if (by === undefined) return [pass]
    const readings = by === null ? null : pass.readings.map((reading) => ({ ...reading, value: reading.value + by }))
    return readings === null ? [] : [{ ...pass, beside: [], readings }]
  })
}

function meanSize(feature: FeatureReference, measurements: Measurements, index: FeatureIndex): number | null {
  const counted = countedPass(feature, measurements, index)
  return counted.kind === 'counted' && counted.pass.setOn === null ? meanOf(counted.values) : null
}
