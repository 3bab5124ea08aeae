import type { putAwayPending as putAwayRoute } from '@tenths/contract'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'

type Route = typeof putAwayRoute

/** Takes a step that was marked as signed off its signers' lists, with a reason that stays. */
export async function putAwayPending(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const { rows: [pending] } = await client.query<{ jobId: string; operationKey: string }>(
    `SELECT job_id AS "jobId", operation_key AS "operationKey" FROM pending_sign_off
      WHERE id = $1 AND $2 = ANY (signers)`, [params.id, person.id],
  )
  if (pending === undefined) throw new ServiceError('not-found', 'No such step waits for you.')
  announce({ kind: 'put-away-pending', ...pending })
  await lockJob(client, pending.jobId, 'allowed')
  const { rowCount } = await client.query('SELECT FROM sign_off WHERE id = $1', [params.id])
  if (rowCount !== 0) throw new ServiceError('operation-signed', 'This step is confirmed and sealed already.')
  await client.query(
    `INSERT INTO pending_end (pending_sign_off_id, kind, reason, person_id) VALUES ($1, 'put-away', $2, $3)
     ON CONFLICT (pending_sign_off_id, kind) DO NOTHING`,
    [params.id, body.reason, person.id],
  )
  return {}
}
