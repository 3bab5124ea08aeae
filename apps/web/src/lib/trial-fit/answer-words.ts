import type { Standing, TrialFitPage } from './trial-fit-page.ts'

/** The answer to *will it go together?*, in one sentence. */
export interface Answer {
  readonly kind: 'good' | 'look' | 'bad'
  readonly sentence: string
  /** What stands beside it, a sentence each. */
  readonly more: readonly string[]
}

/** The gravest thing first: a conflict outranks a doubt, a doubt what nobody has measured. */
export function answerWords(counts: TrialFitPage['counts']): Answer {
  const of = (standing: Standing) => counts[standing] ?? 0
  const says: readonly [Standing, Answer['kind'], string, string][] = [
    ['conflict', 'bad', 'Not yet', conflictWords(of('conflict'))],
    ['not-proven', 'look', 'Not yet', `${of('not-proven')} ${are(of('not-proven'))} not proven`],
    ['not-measured', 'look', 'Unknown', `${of('not-measured')} not measured`],
    ['to-be-cut', 'look', 'Not yet', `${of('to-be-cut')} still to be machined`],
  ]
  const [first, ...rest] = says.filter(([standing]) => of(standing) > 0)
  const fitting = of('fits')
  if (first === undefined) return { kind: 'good', sentence: `Yes: all ${fitting} fits are measured and go together.`, more: [] }
  const [, kind, word, words] = first
  return {
    kind,
    sentence: `${word}: ${words}.`,
    more: [...rest.map(([, , , words]) => `${words}.`), ...(fitting === 0 ? [] : [`${fitting} ${fitting === 1 ? 'fits' : 'fit'} as measured.`])],
  }
}

function conflictWords(count: number): string {
  return count === 1 ? '1 conflict' : `${count} conflicts`
}

function are(count: number): string {
  return count === 1 ? 'is' : 'are'
}
