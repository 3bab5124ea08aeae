import { readNextStep, readTagText, type TagText } from '@tenths/contract'
import { address, call } from '../../api/call.ts'
import { ProblemError } from '../../api/problem.ts'

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

/** As `followCode`, for a tag that somebody stands by. */
export async function followTag({ jobNumber, mark }: Pick<TagText, 'jobNumber' | 'mark'>, bench: string | null): Promise<Led> {
  try {
    const { step } = await call(readNextStep, {
      params: { number: jobNumber }, query: { mark: mark ?? '', ...(bench === null ? {} : { bench }) },
    })
    if (step === null) {
      const what = mark === null ? `Every step of job ${jobNumber}` : `Every step of job ${jobNumber} that measures ${mark}`
      return { kind: 'sentence', sentence: `${what} is signed.` }
    }
    const path = address('/bench/jobs/:number/:operation', { number: jobNumber, operation: step.key }, { tag: mark ?? '' })
    return { kind: 'step', path, title: `${step.title}, job ${jobNumber}` }
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    return { kind: 'sentence', sentence: error.message }
  }
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text
}
