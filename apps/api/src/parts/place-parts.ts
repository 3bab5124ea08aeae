import type { addPart as addPartRoute, placeParts as placePartsRoute } from '@tenths/contract'
import { partOfPlace } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { v7 as uuid } from 'uuid'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { loadPlaced } from '../judging/load-placed.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { keepLots } from '../lots/set-lots.ts'
import { reOpen } from '../re-opening/re-open.ts'
import { placesOf } from './create-parts.ts'
import { relyingOnMove } from './relying-on-move.ts'

interface Move {
  readonly id: string
  readonly partId: string
  readonly place: string | null
}

/** Puts parts in places, all at once: a swap is two moves. Their readings go with them. */
export async function placeParts(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<typeof placePartsRoute>,
): Promise<Answer<typeof placePartsRoute>> {
  announce({ kind: 'place-parts', jobId: params.id })
  await lockJob(client, params.id)
  await checkMoves(client, params.id, body.moves)
  return moveParts(client, { jobId: params.id, personId: person.id, reason: body.reason, moves: body.moves })
}

/**
 * Adds a part that comes in place of another: it starts with no readings, and what relied on the old one
 * re-opens.
 */
export async function addPart(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<typeof addPartRoute>,
): Promise<Answer<typeof addPartRoute>> {
  const jobId = params.id
  announce({ kind: 'add-part', jobId })
  await lockJob(client, jobId)
  const { plan } = await loadPlan(client, jobId)
  if (!placesOf(plan).includes(body.place)) throw unknownPlace('place')
  const { rowCount } = await client.query(
    `INSERT INTO part (id, job_id, kind, mark, description, lot, owned_by) VALUES ($1, $2, $3, $4, $5, $6, $7)
     ON CONFLICT DO NOTHING`,
    [body.id, jobId, partOfPlace(body.place).kind, body.mark, body.description, body.lot, body.ownedBy],
  )
  if (rowCount === 0) {
    throw new ServiceError(
      'already-exists', `This job has a part marked ${body.mark} already: give it another mark.`, 'mark',
    )
  }
  if (body.lot !== '') {
    await keepLots(client, {
      jobId, personId: person.id, reason: '', lots: [{ id: uuid(), partId: body.id, lot: body.lot }],
    })
  }
  return moveParts(client, {
    jobId, personId: person.id, reason: body.reason, moves: [
      { id: body.placementId, partId: body.id, place: body.place },
    ],
  })
}

/**
 * @throws ServiceError `part-unknown`, or `place-unknown` for a place that the plan has not, or not for this
 * kind of part
 */
async function checkMoves(client: PoolClient, jobId: string, moves: readonly Move[]): Promise<void> {
  const { plan } = await loadPlan(client, jobId)
  const places = new Set(placesOf(plan))
  const { rows } = await client.query<{ id: string; kind: string }>(
    'SELECT id, kind FROM part WHERE job_id = $1 AND id = ANY ($2)', [
      jobId, moves.map(({ partId }) => partId),
    ],
  )
  const kinds = new Map(rows.map(({ id, kind }) => [id, kind]))
  const taken = new Set<string>()
  moves.forEach(({ partId, place }, index) => {
    const kind = kinds.get(partId)
    if (kind === undefined) {
      throw new ServiceError(
        'part-unknown', 'This job has no such part.', `moves.${index}.partId`,
      )
    }
    if (place === null) return
    const fits = places.has(place) && partOfPlace(place).kind === kind && !taken.has(place)
    if (!fits) throw unknownPlace(`moves.${index}.place`)
    taken.add(place)
  })
}

function unknownPlace(field: string): ServiceError {
  return new ServiceError(
    'place-unknown', 'This engine has no such place for this part, or another is put there too.', field,
  )
}

/**
 * Puts parts that were checked in their places, re-opens what relied on them where they sat, and counts the job anew.
 */
export async function moveParts(
  client: PoolClient,
  { jobId, personId, reason, moves }: {
    jobId: string; personId: string; reason: string; moves: readonly Move[]
  },
): Promise<{ reopened: { key: string; title: string }[] }> {
  const before = await loadPlaced(client, jobId)
  await client.query(
    `INSERT INTO placement (id, job_id, part_id, place, placed_by, reason)
     SELECT id, $1, part_id, place, $2, $6
       FROM unnest($3::uuid[], $4::uuid[], $5::text[]) WITH ORDINALITY AS fresh (id, part_id, place, turn)
      ORDER BY turn
     ON CONFLICT (id) DO NOTHING`,
    [
      jobId, personId, moves.map(({ id }) => id), moves.map(({ partId }) => partId),
      moves.map(({ place }) => place),
      reason,
    ],
  )
  const { evidence, standings } = await projectOperations(client, jobId)
  const relying = await relyingOnMove(client, { jobId, before, after: evidence.placed, standings })
  const reopened = await reOpen(client, relying, { jobId, personId, cause: 'moved-part', reason })
  if (reopened.length > 0) await projectOperations(client, jobId)
  return { reopened }
}
