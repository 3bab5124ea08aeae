import { describe, expect, it } from 'vitest'
import { bushing, reading } from '../testing/samples.ts'
import { figuresOf, viewCells, type CellFacts } from './cell-view.ts'
import { cellsInHandOrder } from './cells.ts'

const cells = cellsInHandOrder([bushing])
const [front, rear] = cells.map(({ key }) => key) as [string, string]
const nothing: CellFacts = {
  drafts: {}, figures: new Map(), current: front, correcting: null, waiting: new Set(), refused: new Map(),
}
const draft = { text: '0.9', sentence: null, doubt: null, note: '' }

describe('what a cell shows', () => {
  it('is what is being typed, else its value, else what the service refused', () => {
    const facts: CellFacts = { ...nothing, figures: new Map([[front, '0.9279']]), refused: new Map([[rear, '9.279']]) }
    expect(viewCells(cells, facts, null).get(front)).toMatchObject({ text: '0.9279', isOpen: false, isBad: false })
    expect(viewCells(cells, facts, null).get(rear)).toMatchObject({ text: '9.279', isOpen: true, isBad: true })
    const typing = { ...facts, drafts: { [rear]: draft } }
    expect(viewCells(cells, typing, null).get(rear)).toMatchObject({ text: '0.9', isBad: false })
  })

  it('is bad with a sentence or a doubt, open while it is corrected, waiting until it has arrived', () => {
    const facts: CellFacts = {
      ...nothing, drafts: { [front]: { ...draft, sentence: 'This is no number.' } }, figures: new Map([[rear, '0.9279']]),
      correcting: rear, waiting: new Set([rear]),
    }
    expect(viewCells(cells, facts, null).get(front)).toMatchObject({ isBad: true, isWaiting: false, isCurrent: true })
    expect(viewCells(cells, facts, null).get(rear)).toMatchObject({ isOpen: true, isWaiting: true, isCurrent: false })
  })

  it('is the same view as before, but for the cells that changed', () => {
    const before = viewCells(cells, nothing, null)
    const now = viewCells(cells, { ...nothing, drafts: { [front]: draft } }, before)
    expect(now.get(front)).not.toBe(before.get(front))
    expect(now.get(rear)).toBe(before.get(rear))
  })

  it('is a figure in the unit of the reader', () => {
    const figures = (unit: 'inch' | 'millimetre') => figuresOf(cells, (key) => (key === front ? reading('a', 'x', 23_565_000) : null), unit)
    expect([...figures('millimetre')]).toEqual([[front, '23.565']])
    expect(figures('inch').get(rear)).toBeUndefined()
  })
})
