import type { Subject } from '../../photographs/tray.svelte.ts'
import { resultTitles } from '../../words.ts'
import type { InspectionResult } from '../sheet/operation-sheet.ts'
import { plainStep, type DoneAtStep } from './done-at-step.ts'

/** What a crack or pressure test of one area showed. */
export interface TestResult extends DoneAtStep {
  readonly kind: 'inspection'
  readonly id: string
  readonly item: string
  readonly title: string
  /** Mark of the part that was tested. */
  readonly mark: string | null
  readonly method: InspectionResult['method']
  /** In pascals. */
  readonly pressure: number | null
  readonly result: InspectionResult['result']
  readonly note: string
  readonly inspector: { readonly id: string; readonly name: string }
}

/** Lot or serial of one part; the reason where it had another one. */
export interface TypedLot extends DoneAtStep {
  readonly kind: 'lot'
  readonly id: string
  readonly partId: string
  /** The part in words: “Piston 1, P1”. */
  readonly title: string
  readonly lot: string
  readonly reason: string
}

/** Something that the owner is to decide: about a line of the fit sheet, or about anything seen. */
export interface Found extends DoneAtStep {
  readonly kind: 'finding'
  readonly id: string
  readonly requirementKey: string | null
  readonly title: string
  readonly sentence: string
  readonly stops: boolean
}

/** A photograph of something, already made small. */
export interface Photographed extends DoneAtStep, Pick<Subject, 'subject' | 'subjectKey' | 'caption'> {
  readonly kind: 'photograph'
  readonly id: string
  readonly picture: Blob
}

/** What is written down beside values and ticks. */
export type WrittenDown = TestResult | TypedLot | Found | Photographed

/** Exactly the fields of its kind, as plain data. */
export function plainWrittenDown(work: WrittenDown): WrittenDown {
  const { id, title } = { title: '', ...work }
  const step = plainStep(work)
  if (work.kind === 'inspection') {
    const { kind, item, mark, method, pressure, result, note, inspector } = work
    return { ...step, kind, id, item, title, mark, method, pressure, result, note, inspector: { id: inspector.id, name: inspector.name } }
  }
  if (work.kind === 'lot') {
    const { kind, partId, lot, reason } = work
    return { ...step, kind, id, partId, title, lot, reason }
  }
  if (work.kind === 'finding') {
    const { kind, requirementKey, sentence, stops } = work
    return { ...step, kind, id, requirementKey, title, sentence, stops }
  }
  const { kind, subject, subjectKey, caption, picture } = work
  return { ...step, kind, id, subject, subjectKey, caption, picture }
}

/** What it was, in few words: “Piston 1, P1: lot 4711”. */
export function sayWrittenDown(work: WrittenDown): string {
  if (work.kind === 'inspection') return `${work.title}: ${resultTitles[work.result].toLowerCase()}${work.note ? `, ${work.note}` : ''}`
  if (work.kind === 'lot') return `${work.title}: lot ${work.lot}`
  if (work.kind === 'finding') return `Found: ${work.title}${work.sentence ? `. ${work.sentence}` : ''}`
  return `Photograph: ${work.caption}`
}
