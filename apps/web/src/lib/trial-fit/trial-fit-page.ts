import type { readTrialFit } from '@tenths/contract'
import type { AnswerOf } from '../api/call.ts'

export type TrialFitPage = AnswerOf<typeof readTrialFit>
export type TrialLine = TrialFitPage['lines'][number]
export type Standing = TrialLine['standing']
export type Suggestion = TrialFitPage['suggestions'][number]
