import type { readOperation as readOperationRoute } from '@tenths/contract'
import { JUDGE_VERSION, materialOf, type FeatureDefinition, type Plan } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import { loadFindings } from '../findings/load-findings.ts'
import type { Answer } from '../http/register.ts'
import { loadInspections } from '../inspections/load-inspections.ts'
import { featuresAt, placesSeen, requirementsOf, withNeighbours } from '../judging/features-of.ts'
import { findJob } from '../judging/find-job.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { standingsOf } from '../judging/standing.ts'
import { countingInspections } from '../judging/tested.ts'
import { loadLotPlaces } from '../lots/load-lots.ts'
import { loadMarks } from '../parts/load-marks.ts'
import { loadPending } from '../pending/load-pending.ts'
import { loadPhotographs } from '../photographs/load-photographs.ts'
import { definitionHash } from '../plans/definition-hash.ts'
import { numbersInForce, type NumbersInForce } from '../plausibility/numbers-in-force.ts'
import { loadFullPasses } from './load-full-passes.ts'
import { loadObservations } from './load-observations.ts'
import { loadSignOffPages } from './load-sign-offs.ts'
import { drawnFrom } from './drawn-from.ts'
import { operationOf } from './reach.ts'
import { timeWorked } from './work-time.ts'

type Page = Answer<typeof readOperationRoute>

/**
 * Everything one step needs at the bench, in the same few statements however large the job is. Read it in a snapshot: a
 * reading that arrives meanwhile is in all of it or in none.
 */
export async function readOperation(
  database: Queryable, { number, key, personId }: { number: number; key: string; personId: string },
): Promise<Page> {
  const job = await findJob(database, { number })
  const evidence = await loadEvidence(database, job.id)
  const marks = await loadMarks(database, job.id)
  const pending = await loadPending(database, { jobId: job.id })
  const { plan } = evidence
  const operation = operationOf(plan, key)
  const standing = standingsOf(evidence).find((one) => one.operation.key === key)
  if (standing === undefined) throw new Error(`Operation ${key} of the plan stands nowhere.`)
  const features = withNeighbours(plan, featuresAt(plan, operation))
  const places = placesSeen(features)
  const placed = evidence.placed.filter(({ place }) => places.has(place))
  const partAt = new Map(placed.map(({ place, partId }) => [place, partId]))
  const measured = features.flatMap(({ place, feature }) => {
    const partId = partAt.get(place)
    return partId === undefined ? [] : [{ partId, feature }]
  })
  const requirementKeys = new Set(operation.requirements)
  const marked = new Set(pending.flatMap(({ operationKey, state }) => (state === 'to-confirm' ? [operationKey] : [])))
  const page = {
    job: {
      id: job.id, number: job.number, engineName: job.engineName, duty: job.duty, state: job.state,
      planRevision: evidence.planRevision,
    },
    operation,
    stage: operation.stage,
    state: standing.state,
    definitionHash: definitionHash(plan, key),
    judgeVersion: JUDGE_VERSION,
    waitsFor: standing.waitsFor.map(({ key: earlier, title }) => (
      { key: earlier, title, marked: marked.has(earlier) }
    )),
    features,
    requirements: requirementsOf(plan, operation),
    ...drawnFrom(plan, operation),
    placed: placed.map((one) => ({ ...one, mark: marks.get(one.partId) ?? '' })),
    verdicts: standing.verdicts,
    bore: plan.input.engine.bore,
    materials: materialsOf(plan, features),
    ...ownNumbers(await numbersInForce(database)),
    concessions: evidence.concessions.filter(({ requirement }) => requirementKeys.has(requirement)),
    pending: pending.filter(({ operationKey }) => operationKey === key),
    passes: await loadFullPasses(database, job.id, measured),
    gauges: await loadGauges(database, [...new Set(features.map(({ quantity }) => quantity))]),
    inspections: await loadInspections(database, job.id, key, countingInspections(evidence)),
    lots: await loadLotPlaces(database, evidence.placed, operation.lots ?? []),
    observations: await loadObservations(database, job.id, key),
    photographs: await loadPhotographs(database, { jobId: job.id, operationKey: key }),
    findings: await loadFindings(database, { jobId: job.id, operationKey: key }),
    signOffs: await loadSignOffPages(database, job.id, key),
    work: await timeWorked(database, job.id, key, personId),
  }
  // Domain and contract describe the same shapes (a type test holds them equal); the domain's are readonly.
  return page as unknown as Page
}

/** By place, so that what is typed without a network is corrected at once. */
function materialsOf(plan: Plan, features: readonly FeatureDefinition[]): Page['materials'] {
  return Object.fromEntries(features.flatMap((feature) => {
    const material = materialOf(feature, plan.input)
    return material === null ? [] : [[feature.place, material] as const]
  }))
}

/** Left out where the shop goes by the starter's numbers, as most do. */
function ownNumbers({ own }: NumbersInForce): Pick<Page, 'numbers'> {
  return Object.keys(own).length === 0 ? {} : { numbers: { ...own } }
}

/** Gauges that can measure what is measured here, by mark. Those out of date are shown as such. */
async function loadGauges(database: Queryable, quantities: readonly string[]): Promise<Page['gauges']> {
  const { rows } = await database.query<Page['gauges'][number]>(
    `SELECT id, mark, name, kind, quantity, resolution, analogue,
            clockwise_is_smaller AS "clockwiseIsSmaller",
            standard_uncertainty AS "standardUncertainty", calibrated_until AS "calibratedUntil", retired
       FROM gauge
      WHERE quantity = ANY ($1) AND NOT retired
      ORDER BY mark`,
    [quantities],
  )
  return rows
}
