import { sealedColumns, sealedReading, type SealedReading } from '../bench/relied-readings.ts'
import type { SealedZero } from '../bench/sealed-zeros.ts'
import type { WithoutNetwork } from '../bench/sign-off-payload.ts'
import type { Queryable } from '../database/queryable.ts'
import type { SealedInspection } from '../inspections/sealed-inspections.ts'
import type { SealedLot } from '../lots/load-lots.ts'
import type { SealedPhotograph } from '../photographs/load-photographs.ts'
import type { StoredSeal } from '../seals/chain.ts'

/** A job's rows as they lie in the database, beside the seals that speak of them. */
export interface StoredJob {
  readonly id: string
  readonly number: number
  readonly state: 'open' | 'handed-over'
  readonly planRevision: number
  readonly sealCount: number
  readonly sealHead: string
  readonly seals: readonly (StoredSeal & { readonly kind: string; readonly sealedAt: string })[]
  readonly plans: readonly {
    readonly revision: number; readonly plan: string; readonly reason: string; readonly person: string
  }[]
  readonly signOffs: readonly StoredSignOff[]
  readonly readings: ReadonlyMap<string, StoredReading>
  readonly zeroChecks: ReadonlyMap<string, SealedZero>
  readonly observations: ReadonlyMap<string, StoredObservation>
  readonly inspections: ReadonlyMap<string, StoredInspection>
  readonly lots: ReadonlyMap<string, SealedLot>
  /** With the hash of the bytes that lie there now. */
  readonly photographs: ReadonlyMap<string, SealedPhotograph>
  readonly concessions: readonly StoredConcession[]
  readonly reOpenings: readonly StoredReOpening[]
}

export interface StoredSignOff {
  readonly id: string
  readonly sealNumber: number
  readonly operationKey: string
  readonly definitionHash: string
  readonly planRevision: number
  readonly signers: readonly string[]
  readonly readings: readonly string[]
  /** When it was signed by the device's clock, and who confirmed it when; null of one that did not wait. */
  readonly withoutNetwork: WithoutNetwork | null
}

/** A reading as the tables hold it now, in the shape in which it is sealed. */
export interface StoredReading extends SealedReading {
  readonly superseded: boolean
}

export interface StoredObservation {
  readonly id: string
  readonly item: string
  readonly outcome: string
  readonly note: string
  readonly person: string
  readonly since?: string
}

/** A result as the table holds it now, in the shape in which it is sealed. */
export type StoredInspection = Omit<SealedInspection, 'title'>

export interface StoredConcession {
  readonly finding: string
  readonly requirement: string | null
  readonly low: number | null
  readonly high: number | null
  readonly reason: string
  readonly person: string
}

export interface StoredReOpening {
  readonly signOff: string
  readonly sealNumber: number
  readonly cause: string
  readonly reason: string
  readonly person: string
}

/** Loads a job's rows as one moment shows them; the caller holds the snapshot. */
export async function loadStoredJob(database: Queryable, jobId: string): Promise<StoredJob> {
  const rows = async <Row extends object>(sql: string) => (await database.query<Row>(sql, [jobId])).rows
  const [job] = await rows<Pick<StoredJob, 'id' | 'number' | 'state' | 'planRevision' | 'sealCount' | 'sealHead'>>(
    `SELECT id, number, state, plan_revision AS "planRevision", seal_count AS "sealCount",
            seal_head AS "sealHead"
       FROM job WHERE id = $1`,
  )
  if (job === undefined) throw new Error(`There is no job ${jobId}.`)
  const seals = await rows<StoredSeal & { kind: string; sealedAt: Date }>(
    `SELECT number, kind, payload, previous, hash, sealed_at AS "sealedAt"
       FROM seal WHERE job_id = $1 ORDER BY number`,
  )
  const readings = await rows<Parameters<typeof sealedReading>[0] & { superseded: boolean }>(
    `SELECT ${sealedColumns},
            EXISTS (SELECT FROM reading AS correction WHERE correction.supersedes = reading.id
                       AND correction.pass_id = reading.pass_id
                       AND correction.point = reading.point) AS superseded
       FROM pass
       JOIN reading ON reading.pass_id = pass.id
       JOIN part ON part.id = pass.part_id
       JOIN gauge ON gauge.id = pass.gauge_id
      WHERE pass.job_id = $1`,
  )
  const observations = await rows<Omit<StoredObservation, 'since'> & { since: Date | null }>(
    'SELECT id, item, outcome, note, since, person_id AS person FROM observation WHERE job_id = $1',
  )
  const inspections = await rows<StoredInspection>(
    `SELECT id, item, part_id AS part, method, pressure, result, note, inspector_id AS inspector,
            person_id AS person
       FROM inspection WHERE job_id = $1`,
  )
  const lots = await rows<SealedLot>(
    `SELECT part_lot.id, part.mark AS part, part_lot.lot
       FROM part_lot JOIN part ON part.id = part_lot.part_id WHERE part_lot.job_id = $1`,
  )
  const photographs = await rows<SealedPhotograph>(
    `SELECT id, encode(sha256(bytes), 'hex') AS sha256, subject, subject_key AS "subjectKey"
       FROM photograph WHERE job_id = $1`,
  )
  const zeroChecks = await rows<SealedZero>(
    `SELECT zero_check.id, gauge.mark AS gauge, zero_check.deviation, zero_check.allowed, zero_check.person_id AS person
       FROM zero_check JOIN gauge ON gauge.id = zero_check.gauge_id WHERE zero_check.job_id = $1`,
  )
  const signOffs = await rows<Omit<StoredSignOff, 'withoutNetwork'> & {
    signedOnDeviceAt: Date | null; confirmed: { person: string; at: string }[] | null
  }>(
    `SELECT id, seal_number AS "sealNumber", operation_key AS "operationKey",
            definition_hash AS "definitionHash", plan_revision AS "planRevision",
            ARRAY(SELECT person_id::text FROM signature
                   WHERE sign_off_id = sign_off.id ORDER BY 1) AS signers,
            ARRAY(SELECT reading_id::text FROM sign_off_reading
                   WHERE sign_off_id = sign_off.id ORDER BY 1) AS readings,
            (SELECT device_at FROM pending_sign_off WHERE id = sign_off.id) AS "signedOnDeviceAt",
            (SELECT json_agg(json_build_object('person', person_id, 'at', confirmed_at)
                             ORDER BY confirmed_at, person_id)
               FROM pending_confirmation WHERE pending_sign_off_id = sign_off.id) AS confirmed
       FROM sign_off WHERE job_id = $1 ORDER BY seal_number`,
  )
  return {
    ...job,
    seals: seals.map((seal) => ({ ...seal, sealedAt: seal.sealedAt.toISOString() })),
    plans: await rows(
      'SELECT revision, plan, reason, made_by AS person FROM plan_revision WHERE job_id = $1 ORDER BY revision',
    ),
    signOffs: signOffs.map(({ signedOnDeviceAt, confirmed, ...signOff }) => ({
      ...signOff,
      withoutNetwork: signedOnDeviceAt && confirmed && {
        signedAt: signedOnDeviceAt.toISOString(),
        confirmed: confirmed.map(({ person, at }) => ({ person, at: new Date(at).toISOString() })),
      },
    })),
    readings: byId(readings.map(({ superseded, ...row }) => ({ ...sealedReading(row), superseded }))),
    zeroChecks: byId(zeroChecks),
    observations: new Map(observations.map(({ since, ...observation }) => [
      observation.id, { ...observation, ...(since === null ? {} : { since: since.toISOString() }) },
    ])),
    inspections: byId(inspections),
    lots: byId(lots),
    photographs: byId(photographs),
    concessions: await rows<StoredConcession>(
      `SELECT finding_id AS finding, requirement_key AS requirement, low, high, reason, decided_by AS person
         FROM finding_decision WHERE job_id = $1 AND decision = 'concession'`,
    ),
    reOpenings: await rows<StoredReOpening>(
      `SELECT sign_off_id AS "signOff", seal_number AS "sealNumber", cause, reason, person_id AS person
         FROM re_opening WHERE job_id = $1`,
    ),
  }
}

function byId<Row extends { readonly id: string }>(rows: readonly Row[]): Map<string, Row> {
  return new Map(rows.map((row) => [row.id, row]))
}
