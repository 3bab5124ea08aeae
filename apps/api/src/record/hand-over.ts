import type { handOver as handOverRoute, reopenJob as reopenJobRoute } from '@tenths/contract'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { standingsOf } from '../judging/standing.ts'
import { appendSeal } from '../seals/seal.ts'

/** What handing over seals: that every step of the plan in force was signed. */
export interface HandoverPayload {
  readonly planRevision: number
  readonly signOffs: readonly { readonly operation: string; readonly signOff: string }[]
  readonly person: string
}

/**
 * Closes a job: every operation signed, no finding open. The seal closes the chain until the owner opens it
 * again.
 */
export async function handOver(
  { client, person, announce }: CommandContext, { params }: CommandInput<typeof handOverRoute>,
): Promise<Answer<typeof handOverRoute>> {
  const jobId = params.id
  announce({ kind: 'hand-over', jobId })
  await lockJob(client, jobId)
  const evidence = await loadEvidence(client, jobId)
  const standings = standingsOf(evidence)
  const open = standings.filter(({ signOff }) => signOff === null).map(({ operation }) => operation.title)
  if (open.length > 0) throw unfinished('Not signed yet', open)
  if (evidence.openFindings.length > 0) {
    throw unfinished(
      'Findings to decide', evidence.openFindings.map(({ title }) => title),
    )
  }
  const payload: HandoverPayload = {
    planRevision: evidence.planRevision,
    signOffs: standings.flatMap(({ operation, signOff }) =>
      signOff === null ? [] : [{ operation: operation.key, signOff: signOff.id }]),
    person: person.id,
  }
  const seal = await appendSeal(client, { jobId, kind: 'handover', payload })
  await client.query(
    `UPDATE job SET state = 'handed-over', handed_over_at = $2 WHERE id = $1`, [jobId, seal.sealedAt],
  )
  await client.query(
    'UPDATE work_time SET stopped_at = now() WHERE job_id = $1 AND stopped_at IS NULL', [jobId],
  )
  return { sealHead: seal.hash, sealCount: seal.number }
}

/** Opens a closed job again: from now on it takes readings and corrections, and is handed over anew. */
export async function reopenJob(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<typeof reopenJobRoute>,
): Promise<Answer<typeof reopenJobRoute>> {
  announce({ kind: 'reopen-job', jobId: params.id })
  const job = await lockJob(client, params.id, 'allowed')
  if (job.state === 'open') throw new ServiceError('body-invalid', `Job ${job.number} is open.`)
  await appendSeal(client, {
    jobId: job.id, kind: 're-opening', payload: {
      signOff: null, cause: 'owner', reason: body.reason, person: person.id,
    },
  })
  await client.query(`UPDATE job SET state = 'open', handed_over_at = NULL WHERE id = $1`, [job.id])
  return {}
}

function unfinished(words: string, titles: readonly string[]): ServiceError {
  const more = titles.length > 3 ? ` and ${titles.length - 3} more` : ''
  return new ServiceError('job-not-finished', `${words}: ${titles.slice(0, 3).join(', ')}${more}.`)
}
