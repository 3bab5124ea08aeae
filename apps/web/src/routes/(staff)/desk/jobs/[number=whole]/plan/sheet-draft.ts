import type { Read } from '$lib/engines/read-draft.ts'
import { figureText, readFigure } from '$lib/figure-text.ts'
import type { SheetLimit } from '@tenths/contract'
import { DomainError, type Quantity, type ReaderUnit } from '@tenths/domain'
import type { z } from 'zod'

type Sheet = z.infer<typeof SheetLimit>

/** Limits off a maker's sheet, as they are being typed; an empty one is none. */
export interface SheetDraft {
  fit: string
  level: Sheet['level']
  low: string
  high: string
  target: string
  source: string
  /** Advice of a sheet that was there before stays with it. */
  advice: { adviceLow: number | null; adviceHigh: number | null }
}

export const emptySheet = (): SheetDraft => ({
  fit: '', level: 'part-maker', low: '', high: '', target: '', source: '', advice: { adviceLow: null, adviceHigh: null },
})

/** A fit that a sheet can speak about: the quantity that it limits decides how its figures are typed. */
export interface FitChoice {
  readonly fit: string
  readonly title: string
  readonly quantity: Quantity
}

export function quantityOf(fit: string, fits: readonly FitChoice[]): Quantity {
  return fits.find((choice) => choice.fit === fit)?.quantity ?? 'length'
}

export function sheetDraftOf({ fit, level, limits, source }: Sheet, fits: readonly FitChoice[], unit: ReaderUnit): SheetDraft {
  const text = (value: number | null): string => (value === null ? '' : figureText(value, quantityOf(fit, fits), unit))
  return {
    fit, level, source,
    low: text(limits.low),
    high: text(limits.high),
    target: text(limits.target),
    advice: { adviceLow: limits.adviceLow, adviceHigh: limits.adviceHigh },
  }
}

/** Reads all lines; problems are named `sheets.0.low` and so on. */
export function readSheets(drafts: readonly SheetDraft[], fits: readonly FitChoice[], unit: ReaderUnit): Read<Sheet[]> {
  const problems: Record<string, string> = {}
  const value = drafts.map((draft, index): Sheet => {
    const read = (field: 'low' | 'high' | 'target'): number | null => {
      if (draft[field].trim() === '') return null
      try {
        return readFigure(draft[field], quantityOf(draft.fit, fits), unit)
      } catch (error) {
        if (!(error instanceof DomainError)) throw error
        problems[`sheets.${index}.${field}`] = error.message
        return null
      }
    }
    const limits = { low: read('low'), high: read('high'), target: read('target'), ...draft.advice }
    if (!draft.fit) problems[`sheets.${index}.fit`] = 'Choose the fit.'
    if (!draft.source.trim()) problems[`sheets.${index}.source`] = 'Say which sheet, and where on it.'
    if (draft.low.trim() === '' && draft.high.trim() === '') problems[`sheets.${index}.low`] = 'One limit at least is needed.'
    return { fit: draft.fit, level: draft.level, limits, source: draft.source.trim() }
  })
  return Object.keys(problems).length > 0 ? { value: null, problems } : { value, problems: null }
}
