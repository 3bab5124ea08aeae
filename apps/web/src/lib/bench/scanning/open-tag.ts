import { readNextStep, readOperation, readTagText, type TagText } from '@tenths/contract'
import { address, call } from '../../api/call.ts'
import { ProblemError } from '../../api/problem.ts'
import { keptUnder } from '../kept/kept-answers.ts'
import { benchOutbox } from '../outbox/bench-outbox.svelte.ts'
import type { OperationSheet } from '../sheet/operation-sheet.ts'
import { keptStep } from './kept-step.ts'

/** After this long without an answer the device looks at what it keeps, in milliseconds: somebody stands there with a part in hand. */
const patience = 4_000

/** Where a code leads, or the sentence that says why nowhere. */
export type Led =
  | { readonly kind: 'step'; readonly path: string; readonly title: string }
  /** Printed under another address: perhaps another shop's, so a person is asked first. */
  | { readonly kind: 'elsewhere'; readonly tag: TagText & { readonly host: string } }
  | { readonly kind: 'sentence'; readonly sentence: string }

/**
 * Finds the next step of the job or part that a code names.
 * @param bench the bench of this device, if it is known
 * @param host what this page's address is called, such as `shop.example`
 */
export async function followCode(text: string, bench: string | null, host: string): Promise<Led> {
  const tag = readTagText(text)
  if (tag === null) return { kind: 'sentence', sentence: `“${shortened(text)}” is no tag of this shop: scan the tag of a job or of a part.` }
  if (tag.host !== null && tag.host.toLowerCase() !== host) return { kind: 'elsewhere', tag: { ...tag, host: tag.host } }
  return followTag(tag, bench)
}

/** As `followCode`, for a tag that somebody stands by; without the network as far as this device knows the job. */
export async function followTag({ jobNumber, mark }: Pick<TagText, 'jobNumber' | 'mark'>, bench: string | null): Promise<Led> {
  try {
    const { step } = await call(readNextStep, {
      params: { number: jobNumber }, query: { mark: mark ?? '', ...(bench === null ? {} : { bench }) },
    }, { signal: AbortSignal.timeout(patience) })
    if (step === null) {
      const what = mark === null ? `Every step of job ${jobNumber}` : `Every step of job ${jobNumber} that measures ${mark}`
      return { kind: 'sentence', sentence: `${what} is signed.` }
    }
    return stepOf(jobNumber, mark, step)
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    if (error.code !== 'no-network') return { kind: 'sentence', sentence: error.message }
    return followWithout({ jobNumber, mark })
  }
}

/** Without the network a tag leads as far as the sheets that this device keeps. */
async function followWithout({ jobNumber, mark }: Pick<TagText, 'jobNumber' | 'mark'>): Promise<Led> {
  const sheets = await keptUnder(address(readOperation.path, { number: jobNumber, key: '' })) as readonly OperationSheet[]
  const work = benchOutbox.entries.filter(({ state }) => state !== 'refused').map(({ content }) => content)
  const step = keptStep(sheets, work, mark)
  if (step !== null) return stepOf(jobNumber, mark, step)
  const what = mark === null ? `job ${jobNumber}` : `job ${jobNumber} that measures ${mark}`
  return { kind: 'sentence', sentence: `No network, and no open step of ${what} was opened here before.` }
}

function stepOf(jobNumber: number, mark: string | null, { key, title }: { readonly key: string; readonly title: string }): Led {
  const path = address('/bench/jobs/:number/:operation', { number: jobNumber, operation: key }, { tag: mark ?? '' })
  return { kind: 'step', path, title: `${title}, job ${jobNumber}` }
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text
}
