import { nanometresOf } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import {
  beginCorrection, doubt, draftAt, enter, giveNote, giveUp, moveTo, refuse, startEntry, stepBack, typeText,
} from './entry-state.ts'
import { doubleSend } from './double-send.ts'
import { mergeDoubts } from './merge-doubts.ts'
import { readEntry, type EntryContext } from './read-entry.ts'
import { typeKey } from './type-key.ts'

const dial = { display: 'analogue', division: nanometresOf(2_540) } as const
const bore: EntryContext = {
  quantity: 'length', resolution: dial,
  typing: { unit: 'inch', shape: 'hole', nominal: 102_362_000, setting: null, readsBlades: false },
}
const plain = { kind: 'value', blades: null, echo: null, tooFine: null }

describe('a typed value', () => {
  it('is read in the reader’s unit, or in the unit it names', () => {
    expect(readEntry('4.0305', bore)).toEqual({ ...plain, value: 102_374_700 })
    expect(readEntry('102.3747 mm', bore)).toEqual({ ...plain, value: 102_374_700 })
  })

  it('that is no number is refused with a sentence', () => {
    expect(readEntry('4..03', bore)).toMatchObject({ kind: 'unreadable', sentence: expect.stringContaining('4..03') })
    expect(readEntry('  ', bore)).toMatchObject({ kind: 'unreadable' })
  })

  it('finer than half a division of its dial is told so: of a comparator what the dial shows counts, not the size', () => {
    expect(readEntry('4.03051', bore)).toMatchObject({ tooFine: expect.stringContaining('half a division') })
    expect(readEntry('4.03055', bore)).toMatchObject({ tooFine: null })
    const set = { ...bore, typing: { ...bore.typing, setting: { size: 102_362_001, sense: 'plus-is-larger' } } } as const
    expect(readEntry('+1.5', set)).toMatchObject({ value: 102_365_811, tooFine: null, echo: expect.stringContaining('larger than') })
  })

  it('of a torque is read in the torque unit of the reader', () => {
    const torque = { quantity: 'torque', typing: { ...bore.typing, unit: 'millimetre' }, resolution: null } as const
    expect(readEntry('65', torque)).toMatchObject({ kind: 'value', value: 65_000 })
  })
})

describe('doubts about one value', () => {
  const ask = { outcome: 'ask', rule: 'sign', sentence: 'Plus or minus?' } as const
  const block = { outcome: 'block', rule: 'pair', sentence: 'Swapped?' } as const
  it('are one question, and what is beyond belief comes first', () => {
    expect(mergeDoubts([])).toBeNull()
    expect(mergeDoubts([ask, { ...ask, sentence: 'Sure?' }])).toMatchObject({ outcome: 'ask', sentence: 'Plus or minus? Sure?' })
    expect(mergeDoubts([ask, block])).toMatchObject({ outcome: 'block', sentence: 'Swapped?' })
  })
  it('ask about the same value twice at once, and about nothing slower than a gauge that sends twice', () => {
    const twice = (value: number, at: number) => doubleSend({ value: 7, at: 1_000 }, { value, at })?.rule
    expect([twice(7, 1_100), twice(7, 1_200), twice(8, 1_100)]).toEqual(['double-send', undefined, undefined])
    expect(doubleSend(null, { value: 7, at: 0 })).toBeNull()
  })
})

describe('the pad', () => {
  it('types figures, one point and a sign that turns back', () => {
    const text = (['4', '.', '0', '.', '3', '±'] as const).reduce(typeKey, '')
    expect(text).toBe('−4.03')
    expect(typeKey(text, '±')).toBe('4.03')
    expect(typeKey('4.03', '⌫')).toBe('4.0')
  })
})

describe('what is being typed', () => {
  it('stays, with the focus, when it is refused', () => {
    const state = refuse(typeText(startEntry('a'), 'a', '4..03'), 'a', 'No length.')
    expect(state.current).toBe('a')
    expect(draftAt(state, 'a')).toEqual({ text: '4..03', sentence: 'No length.', doubt: null, note: '' })
  })

  it('stays in its cell while another cell is filled', () => {
    let state = typeText(startEntry('a'), 'a', '4.0')
    state = enter(typeText(moveTo(state, 'b'), 'b', '4.0301'), 'b', 'c')
    expect(draftAt(state, 'a')?.text).toBe('4.0')
    expect(draftAt(state, 'b')).toBeNull()
    expect(state.current).toBe('c')
  })

  it('loses what was said of it as soon as it changes', () => {
    const found = { outcome: 'ask', rule: 'unit', sentence: 'Sure?' } as const
    const state = typeText(doubt(typeText(startEntry('a'), 'a', '102'), 'a', found), 'a', '102.')
    expect(draftAt(state, 'a')?.doubt).toBeNull()
  })
})

describe('a value beyond belief', () => {
  it('keeps its text and the note that is being written until both are right', () => {
    const found = { outcome: 'block', rule: 'pair', sentence: 'Swapped?' } as const
    const state = giveNote(doubt(typeText(startEntry('a'), 'a', '4.02'), 'a', found), 'a', 'Smaller piston to come.')
    expect(draftAt(doubt(state, 'a', found), 'a')).toMatchObject({ text: '4.02', note: 'Smaller piston to come.', doubt: found })
    expect(draftAt(typeText(state, 'a', '4.03'), 'a')).toMatchObject({ note: '', doubt: null })
  })
})

describe('undo', () => {
  it('gives up typed text before it touches a stored value', () => {
    let state = enter(typeText(startEntry('a'), 'a', '1'), 'a', 'b')
    state = typeText(state, 'b', '2')
    const back = stepBack(state)
    expect(back).toMatchObject({ correct: null, state: { current: 'b', drafts: {} } })
  })

  it('goes back over stored values, the last one first', () => {
    let state = enter(typeText(startEntry('a'), 'a', '1'), 'a', 'b')
    state = enter(typeText(state, 'b', '2'), 'b', 'c')
    const once = stepBack(state)!
    expect(once.correct).toBe('b')
    expect(stepBack(once.state)?.correct).toBe('a')
  })

  it('has nothing to do at the start', () => {
    expect(stepBack(startEntry('a'))).toBeNull()
  })
})

describe('a correction', () => {
  it('ends when it is given up or its value is entered', () => {
    const begun = beginCorrection(startEntry('a'), 'a', '4.0305', 'slip')
    expect(giveUp(begun, 'a').correction).toBeNull()
    expect(enter(begun, 'a', 'b').correction).toBeNull()
  })

  it('stays while its cell holds text, wherever the focus goes', () => {
    expect(moveTo(beginCorrection(startEntry('a'), 'a', '4.03'), 'b').correction?.cell).toBe('a')
  })
})
