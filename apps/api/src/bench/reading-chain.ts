import type { FeatureDefinition } from '@tenths/domain'
import { ServiceError } from '../http/problem.ts'

/** A reading as it came from the bench, at its place in the request. */
export interface NewReading {
  readonly index: number
  readonly id: string
  readonly point: string
  readonly value: number
  readonly typed: string
  readonly supersedes: string | null
  readonly reason: string | null
  readonly deviceAt: string | null
  readonly confirmed: boolean
  readonly blades?: { readonly stops: number | null }
  readonly note?: string | null
}

/**
 * Checks that each reading is the next link of its point's chain: the first of a point that has none, or a
 * correction of the one that counts, with a reason.
 * @param chainEnds id of the reading that counts, by point, before these
 * @returns the readings with the path of their field, in order
 * @throws ServiceError `point-unknown`, `point-taken`, `reading-not-latest`, or `body-invalid` for a reason
 *   that is missing
 */
export function ownLinks(
  readings: readonly NewReading[], chainEnds: ReadonlyMap<string, string>, definition: FeatureDefinition,
): { reading: NewReading; field: string }[] {
  const ends = new Map(chainEnds)
  const points = new Set(definition.points.map(({ key }) => key))
  return readings.map((reading) => {
    const field = `readings.${reading.index}`
    if (!points.has(reading.point)) {
      throw new ServiceError(
        'point-unknown', `${definition.title} has no point “${reading.point}”.`, `${field}.point`,
      )
    }
    const end = ends.get(reading.point)
    if (reading.supersedes === null && end !== undefined) {
      throw new ServiceError(
        'point-taken', `${definition.title} is measured at this point already: correct that reading, or begin a new pass.`,
        `${field}.point`,
      )
    }
    if (reading.supersedes !== null && reading.supersedes !== end) {
      throw new ServiceError(
        'reading-not-latest', 'Somebody corrected this reading meanwhile: look at it again.',
        `${field}.supersedes`,
      )
    }
    if ((reading.supersedes === null) !== (reading.reason === null) || reading.reason === '') {
      throw new ServiceError('body-invalid', 'Say why this reading is corrected.', `${field}.reason`)
    }
    ends.set(reading.point, reading.id)
    return { reading, field }
  })
}
