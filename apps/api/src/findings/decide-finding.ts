import type { decideFinding as decideFindingRoute } from '@tenths/contract'
import { judge, measurementsOf } from '@tenths/domain'
import type { PoolClient } from 'pg'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { reOpen } from '../re-opening/re-open.ts'
import { signaturesOn } from '../re-opening/relying.ts'
import { appendSeal } from '../seals/seal.ts'
import { loadFinding, type WireFinding } from './load-findings.ts'

type Input = CommandInput<typeof decideFindingRoute>

/** What a concession seals. */
export interface ConcessionPayload {
  readonly finding: string
  readonly title: string
  readonly operation: string | null
  readonly requirement: string | null
  readonly low: number | null
  readonly high: number | null
  readonly reason: string
  readonly person: { readonly id: string; readonly name: string }
}

/**
 * The owner's decision. A concession covers the requirement for an interval of values and is sealed; any
 * other sends the part back, and re-opens the step if it was signed.
 */
export async function decideFinding(
  { client, person, announce }: CommandContext, { params, body }: Input,
): Promise<WireFinding> {
  const finding = await findFinding(client, params.id)
  const { jobId, operationKey, requirementKey } = finding
  announce({ kind: 'decide-finding', jobId, ...(operationKey === null ? {} : { operationKey }) })
  await lockJob(client, jobId)
  const { rowCount } = await client.query(
    `UPDATE finding SET state = 'decided' WHERE id = $1 AND state = 'open'`, [finding.id],
  )
  if (rowCount === 0) throw new ServiceError('finding-decided', 'This finding is decided already.')
  const isConcession = body.decision === 'concession'
  const { low, high } = isConcession && requirementKey !== null
    ? await interval(client, jobId, requirementKey, body)
    : { low: null, high: null }
  await client.query(
    `INSERT INTO finding_decision (finding_id, job_id, decision, reason, requirement_key, low, high, decided_by, decided_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, clock_timestamp())`,
    [finding.id, jobId, body.decision, body.reason, requirementKey, low, high, person.id],
  )
  if (isConcession) {
    const payload: ConcessionPayload = {
      finding: finding.id, title: finding.title, operation: operationKey, requirement: requirementKey, low,
      high,
      reason: body.reason, person: { id: person.id, name: person.name },
    }
    await appendSeal(client, { jobId, kind: 'concession', payload })
  } else if (operationKey !== null) {
    await reOpen(client, await signaturesOn(client, jobId, [operationKey]), {
      jobId, personId: person.id, cause: 'owner', reason: body.reason,
    })
  }
  await projectOperations(client, jobId)
  return loadFinding(client, finding.id)
}

interface FoundFinding {
  readonly id: string
  readonly jobId: string
  readonly title: string
  readonly operationKey: string | null
  readonly requirementKey: string | null
}

async function findFinding(client: PoolClient, id: string): Promise<FoundFinding> {
  const { rows: [finding] } = await client.query<FoundFinding>(
    `SELECT id, job_id AS "jobId", title, operation_key AS "operationKey", requirement_key AS "requirementKey"
       FROM finding WHERE id = $1`,
    [id],
  )
  if (finding === undefined) throw new ServiceError('not-found', 'There is no such finding.')
  return finding
}

/** What the concession covers: the values that the owner named, or what is measured now. */
async function interval(
  client: PoolClient, jobId: string, requirementKey: string, body: Input['body'],
): Promise<{ low: number; high: number }> {
  const { plan, placed, passes, settings } = await loadEvidence(client, jobId)
  const requirement = plan.requirements.find(({ key }) => key === requirementKey)
  const verdict = requirement && judge(requirement, measurementsOf(placed, passes), plan.features, settings)
  const low = body.low ?? verdict?.least ?? null
  const high = body.high ?? verdict?.greatest ?? null
  if (low === null || high === null) {
    throw new ServiceError(
      'value-out-of-range', 'Nothing counts as measured here yet: name the values that you let pass.', 'low',
    )
  }
  if (low > high) {
    throw new ServiceError(
      'value-out-of-range', 'The lower value is greater than the upper one.', 'low',
    )
  }
  return { low, high }
}
