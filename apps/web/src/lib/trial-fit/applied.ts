import type { applySuggestion } from '@tenths/contract'
import type { AnswerOf } from '../api/call.ts'

/** A suggestion that was applied, with what is left to do by hand. */
export type Applied = AnswerOf<typeof applySuggestion> & { readonly title: string }
