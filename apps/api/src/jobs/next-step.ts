import type { readNextStep as contract } from '@tenths/contract'
import type { Plan } from '@tenths/domain'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'
import { featuresAt } from '../judging/features-of.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { loadPlaced } from '../judging/load-placed.ts'

type NextStep = z.input<(typeof contract)['answer']>
type Step = NonNullable<NextStep['step']> & { readonly signed: boolean }

export interface ScannedTag {
  readonly number: number
  /** Mark of the part; empty for the job's own tag. */
  readonly mark: string
  /** The bench where it was scanned. */
  readonly bench: string | undefined
}

/**
 * The step that a tag leads to, of those that are not signed: one that can be done at this bench, then one that can be
 * done at all, then one that will be done here, then the next of the route. Of a part only steps that measure it where
 * it sits now; a part that no step measures goes with the job.
 * @throws ServiceError `not-found` for an unknown job, `part-unknown` for a mark that it does not have
 */
export async function readNextStep(database: Queryable, { number, mark, bench }: ScannedTag): Promise<NextStep> {
  const { rows: [job] } = await database.query<{ id: string }>('SELECT id FROM job WHERE number = $1', [number])
  if (job === undefined) {
    throw new ServiceError('not-found', `There is no job ${number} in this shop: the tag may be another shop’s.`)
  }
  const steps = await stepsInOrder(database, job.id, bench ?? null)
  if (mark === '') return { jobNumber: number, step: nextOf(steps) }
  const place = await placeOf(database, job.id, { number, mark })
  const measuring = stepsMeasuring((await loadPlan(database, job.id)).plan, place)
  const own = steps.filter(({ key }) => measuring.has(key))
  return { jobNumber: number, step: nextOf(own.length === 0 ? steps : own) }
}

async function stepsInOrder(database: Queryable, jobId: string, bench: string | null): Promise<Step[]> {
  const { rows } = await database.query<Step>(
    `SELECT operation_key AS key, title, bench_kind AS "benchKind", reachable, state = 'signed' AS signed
     FROM operation_state
     LEFT JOIN bench ON bench.id = $2 AND bench.kind = operation_state.bench_kind
     WHERE job_id = $1
     ORDER BY reachable AND bench.id IS NOT NULL DESC, reachable DESC, bench.id IS NOT NULL DESC, ordinal`,
    [jobId, bench],
  )
  return rows
}

function nextOf(steps: readonly Step[]): NextStep['step'] {
  return steps.find(({ signed }) => !signed) ?? null
}

function stepsMeasuring(plan: Plan, place: string): ReadonlySet<string> {
  return new Set(plan.operations
    .filter((operation) => featuresAt(plan, operation).some((feature) => feature.place === place))
    .map(({ key }) => key))
}

/** Where the part of that mark sits now. */
async function placeOf(database: Queryable, jobId: string, { number, mark }: { number: number; mark: string }): Promise<string> {
  const { rows: [part] } = await database.query<{ id: string; mark: string }>(
    'SELECT id, mark FROM part WHERE job_id = $1 AND lower(mark) = lower($2) ORDER BY mark = $2 DESC', [jobId, mark],
  )
  if (part === undefined) {
    throw new ServiceError('part-unknown', `Job ${number} has no part ${mark}: the tag may be another shop’s.`, 'mark')
  }
  const placed = (await loadPlaced(database, jobId)).find(({ partId }) => partId === part.id)
  if (placed === undefined) {
    throw new ServiceError('part-unknown', `${part.mark} sits in no place of job ${number} any more: another part took it.`, 'mark')
  }
  return placed.place
}
