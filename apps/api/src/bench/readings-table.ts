import type { BesidePart, MaterialName } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'
import type { NamedPass } from './pass-in-use.ts'
import type { CheckedReading } from './check-fresh.ts'
import type { NewReading } from './reading-chain.ts'

/**
 * The readings that are not kept yet, each with its place in the request: what was sent twice, with whatever
 * key, is taken once.
 * @throws ServiceError `point-taken` when an id belongs to another reading
 */
export async function withoutKnown(
  client: PoolClient, passId: string, readings: readonly Omit<NewReading, 'index'>[],
): Promise<NewReading[]> {
  const { rows } = await client.query<{ id: string; passId: string; point: string; value: number }>(
    'SELECT id, pass_id AS "passId", point, value FROM reading WHERE id = ANY ($1)', [
      readings.map(({ id }) => id),
    ],
  )
  const known = new Map(rows.map((row) => [row.id, row]))
  const indexed = readings.map((reading, index) => ({ ...reading, index }))
  for (const { id, point, value, index } of indexed) {
    const same = known.get(id)
    if (same !== undefined && (same.passId !== passId || same.point !== point || same.value !== value)) {
      throw new ServiceError(
        'point-taken', 'This reading was taken already, with another value.', `readings.${index}.id`,
      )
    }
  }
  return indexed.filter(({ id }) => !known.has(id))
}

export async function insertPass(
  client: PoolClient,
  pass: NamedPass & {
    jobId: string; operationKey: string; standardUncertainty: number; material: MaterialName | null
    personId: string; deviceId: string | null; beside: readonly BesidePart[]
  },
): Promise<void> {
  await client.query(
    `INSERT INTO pass (id, job_id, part_id, feature, number, operation_key, gauge_id, standard_uncertainty, state,
                       set_on_part_id, set_on_feature, person_id, device_id,
                       setting_size, setting_temperature, part_temperature, room_temperature, material)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17, $18)`,
    [
      pass.id, pass.jobId, pass.partId, pass.feature, pass.number, pass.operationKey, pass.gaugeId,
      pass.standardUncertainty,
      pass.state, pass.setOn?.partId ?? null, pass.setOn?.feature ?? null, pass.personId, pass.deviceId,
      pass.setting?.size ?? null, pass.setting?.temperature ?? null, pass.temperatures?.part ?? null,
      pass.temperatures?.room ?? null, pass.material,
    ],
  )
  await client.query(
    `INSERT INTO pass_beside (pass_id, part_id, feature, pass_number)
     SELECT $1, part_id, coalesce(feature, ''), pass
       FROM unnest($2::uuid[], $3::text[], $4::int[]) AS fresh (part_id, feature, pass)`,
    [
      pass.id, pass.beside.map(({ partId }) => partId), pass.beside.map(({ feature }) => feature),
      pass.beside.map(({ pass: number }) => number),
    ],
  )
}

/** Keeps readings, and with one that was doubted the words of the doubt and the numbers that it went by. */
export async function insertReadings(
  client: PoolClient, { passId, personId, deviceId, readings, numbersRevision }: {
    passId: string; personId: string; deviceId: string | null; readings: readonly CheckedReading[]; numbersRevision: number
  },
): Promise<void> {
  await client.query(
    `INSERT INTO reading (id, pass_id, point, value, typed, supersedes, reason, person_id, device_id, device_at,
                          by_blades, stops, confirmed, note, doubt, doubted_by)
     SELECT id, $1, point, value, typed, supersedes, reason, $2, $3, "deviceAt",
            blades IS NOT NULL, (blades ->> 'stops')::bigint, confirmed, nullif(note, ''),
            doubt, CASE WHEN doubt IS NOT NULL THEN $5::integer END
       FROM json_to_recordset($4) AS fresh (
              id uuid, point text, value bigint, typed text, supersedes uuid, reason text,
              "deviceAt" timestamptz, blades json, confirmed boolean, note text, doubt text)`,
    [passId, personId, deviceId, JSON.stringify(readings), numbersRevision],
  )
}
