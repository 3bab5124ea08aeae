import { nanometresOf } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import {
  beginCorrection, doubt, draftAt, enter, giveUp, moveTo, refuse, startEntry, stepBack, typeText,
} from './entry-state.ts'
import { readEntry, type EntryContext } from './read-entry.ts'
import { typeKey } from './type-key.ts'

const dial = { display: 'analogue', division: nanometresOf(2_540) } as const
const bore: EntryContext = {
  quantity: 'length', unit: 'inch', nominal: 102_362_000, expected: null, resolution: dial,
}

describe('a typed value', () => {
  it('is read in the reader’s unit, or in the unit it names', () => {
    expect(readEntry('4.0305', bore)).toEqual({ kind: 'value', value: 102_374_700, doubt: null })
    expect(readEntry('102.3747 mm', bore)).toEqual({ kind: 'value', value: 102_374_700, doubt: null })
  })

  it('that is no number is refused with a sentence', () => {
    expect(readEntry('4..03', bore)).toMatchObject({ kind: 'unreadable', sentence: expect.stringContaining('4..03') })
    expect(readEntry('  ', bore)).toMatchObject({ kind: 'unreadable' })
  })

  it('in the wrong unit is doubted before anything is said of its fineness', () => {
    expect(readEntry('102.3747', bore)).toMatchObject({ kind: 'value', doubt: { outcome: 'block', rule: 'unit' } })
  })

  it('finer than half a division of its dial is refused', () => {
    expect(readEntry('4.03051', bore)).toMatchObject({ kind: 'unreadable', sentence: expect.stringContaining('half a division') })
    expect(readEntry('4.03055', bore)).toMatchObject({ kind: 'value', doubt: null })
  })

  it('of a clearance far from the usual is only asked about', () => {
    const clearance = { ...bore, nominal: null, expected: 17_780 }
    expect(readEntry('0.0070', clearance)).toMatchObject({ kind: 'value', doubt: { outcome: 'ask' } })
    expect(readEntry('0.0004', clearance)).toEqual({ kind: 'value', value: 10_160, doubt: null })
  })

  it('of a torque is read in the torque unit of the reader', () => {
    const torque = { ...bore, quantity: 'torque', unit: 'millimetre', nominal: null, resolution: null } as const
    expect(readEntry('65', torque)).toMatchObject({ kind: 'value', value: 65_000 })
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
    expect(draftAt(state, 'a')).toEqual({ text: '4..03', sentence: 'No length.', doubt: null })
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
