import type { raiseFinding as raiseFindingRoute } from '@tenths/contract'
import { placeTitle, type Plan, type Requirement } from '@tenths/domain'
import { operationOf } from '../bench/reach.ts'
import { requireSamePerson } from '../bench/same-person.ts'
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
  requireSamePerson(person.id, body.raisedBy, 'raisedBy')
  await lockJob(client, jobId)
  if (await isRaised(client, body.id, { jobId, personId: person.id })) return loadFinding(client, body.id)
  const { plan } = await loadPlan(client, jobId)
  if (body.operationKey !== null) operationOf(plan, body.operationKey)
  const requirement = body.requirementKey === null ? null : requirementOf(plan, body.requirementKey)
  const { rowCount } = await client.query(
    `INSERT INTO finding (id, job_id, operation_key, requirement_key, place, source, finding_key, title, sentence, stops,
                          raised_by, device_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)
     ON CONFLICT DO NOTHING`,
    [
      body.id, jobId, body.operationKey, requirement?.key ?? null,
      requirement === null ? null : featuresOfMeasurand(requirement.measurand)[0]?.place ?? null,
      requirement === null ? 'person' : 'judge',
      requirement === null ? `person/${body.id}` : `requirement/${requirement.key}`,
      body.title, body.sentence, body.stops, person.id, body.deviceAt ?? null,
    ],
  )
  if (rowCount === 0) throw waitsAlready(requirement)
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
 * Whether this finding was raised before: raised twice it is one, whatever the owner decided since.
 * @throws ServiceError `already-exists` for an id under which somebody else or another job has one
 */
async function isRaised(
  client: CommandContext['client'], id: string, by: { jobId: string; personId: string },
): Promise<boolean> {
  const { rows: [finding] } = await client.query<{ jobId: string; personId: string | null }>(
    'SELECT job_id AS "jobId", raised_by AS "personId" FROM finding WHERE id = $1', [id],
  )
  if (finding === undefined) return false
  if (finding.jobId === by.jobId && finding.personId === by.personId) return true
  throw new ServiceError('already-exists', 'Another finding has this id already.', 'id')
}

/** Another finding about the same line of the fit sheet waits for the owner. */
function waitsAlready(requirement: Requirement | null): ServiceError {
  const where = requirement === null ? 'this' : featuresOfMeasurand(requirement.measurand).map(
    ({ place }) => placeTitle(place),
  ).join(' and ')
  return new ServiceError('already-exists', `A finding about ${where} waits for the owner already.`)
}
