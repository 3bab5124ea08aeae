import type { raiseFinding as raiseFindingRoute } from '@tenths/contract'
import { placeTitle, type Plan, type Requirement } from '@tenths/domain'
import { operationOf } from '../bench/reach.ts'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import { featuresOfMeasurand } from '../judging/features-of.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { loadFinding, type WireFinding } from './load-findings.ts'

/** Asks the owner to decide, about a requirement that a verdict speaks against, or about anything seen. */
export async function raiseFinding(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<typeof raiseFindingRoute>,
): Promise<WireFinding> {
  const jobId = params.id
  announce({
    kind: 'raise-finding', jobId, ...(body.operationKey === null ? {} : { operationKey: body.operationKey })
  })
  await lockJob(client, jobId)
  const { plan } = await loadPlan(client, jobId)
  if (body.operationKey !== null) operationOf(plan, body.operationKey)
  const requirement = body.requirementKey === null ? null : requirementOf(plan, body.requirementKey)
  const { rowCount } = await client.query(
    `INSERT INTO finding (id, job_id, operation_key, requirement_key, place, source, finding_key, title, sentence, stops,
                          raised_by)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)
     ON CONFLICT DO NOTHING`,
    [
      body.id, jobId, body.operationKey, requirement?.key ?? null,
      requirement === null ? null : featuresOfMeasurand(requirement.measurand)[0]?.place ?? null,
      requirement === null ? 'person' : 'judge',
      requirement === null ? `person/${body.id}` : `requirement/${requirement.key}`,
      body.title, body.sentence, body.stops, person.id,
    ],
  )
  if (rowCount === 0) await requireSame(client, jobId, body.id, requirement)
  await projectOperations(client, jobId)
  return loadFinding(client, body.id)
}

function requirementOf(plan: Plan, key: string): Requirement {
  const requirement = plan.requirements.find((candidate) => candidate.key === key)
  if (requirement === undefined) {
    throw new ServiceError('body-invalid', 'The fit sheet of this job has no such line.', 'requirementKey')
  }
  return requirement
}

/**
 * The same finding raised twice is one; another one about the same line of the fit sheet waits for the owner
 * already.
 */
async function requireSame(
  client: CommandContext['client'], jobId: string, id: string, requirement: Requirement | null,
): Promise<void> {
  const { rowCount } = await client.query('SELECT FROM finding WHERE id = $1 AND job_id = $2', [id, jobId])
  if (rowCount === 1) return
  const where = requirement === null ? 'this' : featuresOfMeasurand(requirement.measurand).map(
    ({ place }) => placeTitle(place),
  ).join(' and ')
  throw new ServiceError('already-exists', `A finding about ${where} waits for the owner already.`)
}
