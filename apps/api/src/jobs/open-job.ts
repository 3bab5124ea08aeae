import type { openJob as contract } from '@tenths/contract'
import type { PoolClient } from 'pg'
import type { z } from 'zod'
import { engineOf, partsOf } from '../engines/wire-engine.ts'
import { ServiceError } from '../http/problem.ts'
import { createParts } from '../parts/create-parts.ts'
import { rulesInForce } from '../plans/rules.ts'
import { storePlan } from '../plans/store-plan.ts'
import { createStatusLink } from '../status/links.ts'

export type JobWanted = z.output<(typeof contract)['body']>
export type OpenedJob = z.input<(typeof contract)['answer']>
type WireEngine = Parameters<typeof engineOf>[0]
type WireParts = Parameters<typeof partsOf>[0]

/**
 * Opens a job: the engine that came in, what came with it, its first plan with its findings, its marked parts and the
 * link for its customer. The path of the link is left out of the answer: it is worked out when the answer is given.
 * @throws ServiceError `not-found`, `already-exists`; DomainError `engine-impossible`, `layout-impossible`
 */
export async function openJob(
  client: PoolClient, wanted: JobWanted, { personId, statusLinkKey }: { personId: string; statusLinkKey: string },
): Promise<OpenedJob> {
  const model = await readCustomerAndModel(client, wanted)
  const number = await insertJob(client, wanted, model.name, personId)
  await insertIntake(client, wanted, personId)
  const plan = await storePlan(client, {
    jobId: wanted.id,
    input: {
      work: wanted.work,
      engine: engineOf(model.specification),
      parts: partsOf(wanted.parts ?? model.parts),
      duty: wanted.duty,
      rules: await rulesInForce(client),
      sheets: [],
      options: wanted.options,
    },
    reason: 'Job opened',
    personId,
  })
  await createParts(client, { jobId: wanted.id, plan, personId })
  await createStatusLink(client, { jobId: wanted.id, personId, key: statusLinkKey })
  return {
    id: wanted.id, number, statusPath: '',
    findings: plan.findings.map((finding) => ({ ...finding, worked: [...finding.worked] })),
  }
}

async function readCustomerAndModel(
  client: PoolClient, { customerId, modelId }: JobWanted,
): Promise<{ name: string; specification: WireEngine; parts: WireParts }> {
  const customer = await client.query('SELECT 1 FROM customer WHERE id = $1', [customerId])
  if (customer.rowCount === 0) throw new ServiceError('not-found', 'There is no such customer.', 'customerId')
  const { rows: [model] } = await client.query<{ name: string; specification: WireEngine; parts: WireParts }>(
    'SELECT name, specification, parts FROM engine_model WHERE id = $1', [modelId],
  )
  if (model === undefined) throw new ServiceError('not-found', 'The library has no such engine.', 'modelId')
  return model
}

async function insertJob(client: PoolClient, wanted: JobWanted, engineName: string, personId: string): Promise<number> {
  const { rows: [job] } = await client.query<{ number: number }>(
    `WITH engine_that_came AS (
       INSERT INTO engine (id, customer_id, model_id, name, serial)
       VALUES (gen_random_uuid(), $2, $3, $4, $5) RETURNING id
     )
     INSERT INTO job (id, customer_id, engine_id, duty, work, wanted, notes, promised_on, opened_by)
     SELECT $1, $2, engine_that_came.id, $6, $7, $8, $9, $10, $11 FROM engine_that_came
     ON CONFLICT (id) DO NOTHING
     RETURNING number`,
    [
      wanted.id, wanted.customerId, wanted.modelId, engineName, wanted.serial, wanted.duty, wanted.work, wanted.wanted,
      wanted.notes, wanted.promisedOn, personId,
    ],
  )
  if (job === undefined) throw new ServiceError('already-exists', 'This job is open already.', 'id')
  return job.number
}

async function insertIntake(client: PoolClient, { id, intake }: JobWanted, personId: string): Promise<void> {
  const { rowCount } = await client.query(
    `INSERT INTO intake_item (id, job_id, description, quantity, condition, owned_by, received_by)
     SELECT item.id, $1, item.description, item.quantity, item.condition, item."ownedBy", $2
     FROM json_to_recordset($3)
       AS item (id uuid, description text, quantity integer, condition text, "ownedBy" text)
     ON CONFLICT (id) DO NOTHING`,
    [id, personId, JSON.stringify(intake)],
  )
  if (rowCount !== intake.length) throw new ServiceError('already-exists', 'An item that came in is listed twice.', 'intake')
}
