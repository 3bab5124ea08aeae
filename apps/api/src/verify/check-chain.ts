import { chainFaults } from '../seals/chain.ts'
import type { Blame } from './fault.ts'
import type { OpenedSeal } from './opened-seal.ts'
import type { StoredJob } from './stored-job.ts'

/**
 * Bytes, links, head and count of the chain, and that each payload speaks of this job, this place and this
 * moment.
 */
export function checkChain(job: StoredJob, opened: readonly OpenedSeal[], blame: Blame): void {
  const byNumber = new Map(opened.map((seal) => [seal.number, seal]))
  for (const { number, sentence } of chainFaults(job.seals, { count: job.sealCount, head: job.sealHead })) {
    blame(byNumber.get(number)?.step ?? null, `seal ${number}: ${sentence}`)
  }
  for (const seal of job.seals) {
    const said = byNumber.get(seal.number)
    if (said === undefined) {
      blame(null, `seal ${seal.number}: its payload cannot be read`)
      continue
    }
    const { kind, jobNumber, number, sealedAt } = said.payload
    const isOwn = kind === seal.kind && jobNumber === job.number && number === seal.number && sealedAt === seal.sealedAt
    if (!isOwn) {
      blame(
        said.step,
        `seal ${seal.number}: it was sealed as number ${number} (${kind}) of job ${jobNumber}, ${sealedAt}`,
      )
    }
  }
}
