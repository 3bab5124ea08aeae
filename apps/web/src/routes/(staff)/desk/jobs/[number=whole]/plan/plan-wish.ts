import type { AnswerOf, CallInput } from '$lib/api/call.ts'
import type { FieldProblems, PartsDraft } from '$lib/engines/draft-types.ts'
import { readParts } from '$lib/engines/read-draft.ts'
import { partsDraftOf } from '$lib/engines/write-draft.ts'
import type { JobDraft } from '$lib/jobs/job-draft.ts'
import type { listRules, previewPlan, readPlan } from '@tenths/contract'
import type { Duty, ReaderUnit } from '@tenths/domain'
import { readSheets, sheetDraftOf, type FitChoice, type SheetDraft } from './sheet-draft.ts'

export type Plan = AnswerOf<typeof readPlan>
export type Wish = CallInput<typeof previewPlan>['body']

/** What the new plan is to be computed from, as it is being typed. */
export interface WishDraft {
  duty: Duty
  options: JobDraft['options']
  parts: PartsDraft
  sheets: SheetDraft[]
  reason: string
  /** Revision that was looked at when typing began. */
  basedOn: number
}

/** The plan in force, to be typed over. */
export function wishOf(plan: Plan, fits: readonly FitChoice[], unit: ReaderUnit): WishDraft {
  return {
    duty: plan.duty,
    options: { ...plan.options },
    parts: partsDraftOf(plan.parts, unit),
    sheets: plan.sheets.map((sheet) => sheetDraftOf(sheet, fits, unit)),
    reason: '',
    basedOn: plan.revision,
  }
}

/** What is sent, or what cannot be read, by field. */
export function readWish(draft: WishDraft, fits: readonly FitChoice[], unit: ReaderUnit): { wish: Wish } | { problems: FieldProblems } {
  const parts = readParts(draft.parts, unit)
  const sheets = readSheets(draft.sheets, fits, unit)
  if (parts.value === null || sheets.value === null) return { problems: { ...parts.problems, ...sheets.problems } }
  return { wish: { duty: draft.duty, options: draft.options, parts: parts.value, sheets: sheets.value } }
}

/** All fits of the shop's rules with what they limit. */
export function fitChoices(rules: AnswerOf<typeof listRules>['rules']): FitChoice[] {
  return rules.map(({ fit, title, quantity }) => ({ fit, title, quantity }))
}
