import { partOfPlace, type Plan } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { v7 as uuid } from 'uuid'
import { firstMark } from './marks.ts'

/** Every place that a plan measures something in, or into which something with a lot goes, once, sorted. */
export function placesOf({ features, operations }: Pick<Plan, 'features' | 'operations'>): string[] {
  const measured = features.map(({ place }) => place)
  return [...new Set([...measured, ...operations.flatMap(({ lots }) => lots ?? [])])].sort()
}

/**
 * Makes a part for every place of the plan that never had one, marks it and puts it there. Places that are
 * known keep what sits in them, so that planning again adds only what is new.
 */
export async function createParts(
  client: PoolClient, { jobId, plan, personId }: {
    jobId: string; plan: Pick<Plan, 'features' | 'operations'>; personId: string
  },
): Promise<void> {
  const { rows } = await client.query<{ place: string }>(
    'SELECT DISTINCT place FROM placement WHERE job_id = $1 AND place IS NOT NULL', [jobId],
  )
  const known = new Set(rows.map(({ place }) => place))
  const parts = placesOf(plan).filter((place) => !known.has(place)).map((place) => ({
    id: uuid(), placement: uuid(), place, kind: partOfPlace(place).kind, mark: firstMark(place),
  }))
  if (parts.length === 0) return
  const column = <Key extends keyof (typeof parts)[number]>(key: Key) => parts.map((part) => part[key])
  await client.query(
    `INSERT INTO part (id, job_id, kind, mark)
     SELECT id, $1, kind, mark FROM unnest($2::uuid[], $3::text[], $4::text[]) AS fresh (id, kind, mark)`,
    [jobId, column('id'), column('kind'), column('mark')],
  )
  await client.query(
    `INSERT INTO placement (id, job_id, part_id, place, placed_by)
     SELECT id, $1, part_id, place, $2
            FROM unnest($3::uuid[], $4::uuid[], $5::text[]) AS fresh (id, part_id, place)`,
    [jobId, personId, column('placement'), column('id'), column('place')],
  )
}
