import type { readBuildRecord } from '@tenths/contract'
import { bobweightFigures, indexFeatures, measurementsOf } from '@tenths/domain'
import type { z } from 'zod'
import { loadFullPasses } from '../bench/load-full-passes.ts'
import { loadObservations } from '../bench/load-observations.ts'
import { loadSignOffPages } from '../bench/load-sign-offs.ts'
import type { Queryable } from '../database/queryable.ts'
import { loadFindings } from '../findings/load-findings.ts'
import { loadInspections } from '../inspections/load-inspections.ts'
import { readSummaries } from '../jobs/job-summary.ts'
import { readToday } from '../jobs/today.ts'
import { findJob } from '../judging/find-job.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { standingsOf } from '../judging/standing.ts'
import { countingInspections } from '../judging/tested.ts'
import { lotsOfPart, withInstants } from '../lots/load-lots.ts'
import { loadPhotographs } from '../photographs/load-photographs.ts'
import { asSigned, loadSealedVerdicts } from './sealed-verdicts.ts'

export type BuildRecordPage = z.input<(typeof readBuildRecord)['answer']>

/** What stands at the end of every record: whose figures they are, and what comes before them. */
const recordCaution = 'These figures are this shop’s responsibility. The part maker’s and engine '
  + 'maker’s sheets, local codes and licensed practice come before them; an aircraft engine is built only '
  + 'under the authority that governs it. A wrong clearance or a loose fastener can wreck an engine and hurt people.'

/**
 * Everything that was measured, judged, seen, decided and signed of one job, in the same few statements for
 * any job.
 */
export async function readRecord(database: Queryable, number: number, now: Date): Promise<BuildRecordPage> {
  const { id: jobId } = await findJob(database, { number })
  const evidence = await loadEvidence(database, jobId)
  const sealed = await loadSealedVerdicts(database, jobId)
  const head = await loadHead(database, jobId)
  const [summary] = await readSummaries(database, [jobId], await readToday(database, now))
  if (summary === undefined) throw new Error(`Job ${number} has no summary.`)
  const observations = await loadObservations(database, jobId, null)
  const inspections = await loadInspections(database, jobId, null, countingInspections(evidence))
  const signOffs = await loadSignOffPages(database, jobId, null)
  const parts = await loadParts(database, jobId)
  const placeOf = new Map(evidence.placed.map(({ partId, place }) => [partId, place]))
  const markOf = new Map(parts.map(({ id, mark }) => [id, mark]))
  const requirements = new Map(
    evidence.plan.requirements.map((requirement) => [requirement.key, requirement]),
  )
  const record = {
    ...head,
    job: summary,
    planRevision: evidence.planRevision,
    operations: standingsOf(evidence).map(({ operation, verdicts, conceded }) => ({
      key: operation.key,
      title: operation.title,
      stage: operation.stage,
      cautions: operation.cautions,
      lines: verdicts.map((verdict) => ({
        requirement: requirements.get(verdict.requirement),
        verdict: asSigned(verdict, sealed.get(verdict.requirement)),
        concession: conceded.get(verdict.requirement) ?? null,
      })),
      bobweights: operation.bobweights === undefined ? []
        : bobweightFigures(operation.bobweights, measurementsOf(evidence.placed, evidence.passes), indexFeatures(evidence.plan.features)),
      observations: operation.observations.flatMap(({ key, title }) => {
        const tick = observations.find(
          ({ operationKey, item }) => operationKey === operation.key && item === key,
        )
        return tick === undefined ? [] : [{ ...tick, title }]
      }),
      inspections: (operation.inspections ?? []).flatMap(({ key, title }) => inspections
        .filter(({ operationKey, item }) => operationKey === operation.key && item === key)
        .map((one) => ({ ...one, title }))),
      signOffs: signOffs.filter(({ operationKey }) => operationKey === operation.key),
    })),
    passes: (await loadFullPasses(database, jobId, null)).map((pass) => ({
      ...pass, mark: markOf.get(pass.partId) ?? '', place: placeOf.get(pass.partId) ?? null,
    })),
    parts: parts.map(({ id, ...part }) => ({ ...part, place: placeOf.get(id) ?? null })),
    photographs: await loadPhotographs(database, { jobId }),
    findings: await loadFindings(database, { jobId }),
    caution: recordCaution,
  }
  // Domain and contract describe the same shapes (a type test holds them equal); the domain's are readonly.
  return record as unknown as BuildRecordPage
}

type Head = Pick<BuildRecordPage, 'shopName' | 'unit' | 'serial' | 'sealCount' | 'sealHead' | 'handedOverAt'>

async function loadHead(database: Queryable, jobId: string): Promise<Head> {
  const { rows: [row] } = await database.query<Omit<Head, 'handedOverAt'> & { handedOverAt: Date | null }>(
    `SELECT shop.name AS "shopName", shop.unit, engine.serial, job.seal_count AS "sealCount",
            job.seal_head AS "sealHead",
            job.handed_over_at AS "handedOverAt"
       FROM job JOIN engine ON engine.id = job.engine_id CROSS JOIN shop
      WHERE job.id = $1`,
    [jobId],
  )
  if (row === undefined) throw new Error(`There is no job ${jobId}.`)
  return { ...row, handedOverAt: row.handedOverAt?.toISOString() ?? null }
}

type RecordedPart = Omit<BuildRecordPage['parts'][number], 'place'> & { id: string }

async function loadParts(database: Queryable, jobId: string): Promise<RecordedPart[]> {
  const { rows } = await database.query<RecordedPart>(
    `SELECT part.id, part.mark, part.kind, part.lot, part.description, coalesce(typed.history, '[]') AS lots
       FROM part LEFT JOIN LATERAL (${lotsOfPart}) AS typed ON true
      WHERE part.job_id = $1
      ORDER BY part.kind, length(part.mark), part.mark`,
    [jobId],
  )
  return rows.map((part) => ({ ...part, lots: withInstants(part.lots) }))
}
