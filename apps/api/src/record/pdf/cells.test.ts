import { describe, expect, it } from 'vitest'
import type { BuildRecordPage } from '../build-record.ts'
import { lots, readings, taken } from './cells.ts'

type RecordPass = BuildRecordPage['passes'][number]

const value = (id: string, changes: Partial<RecordPass['readings'][number]> = {}): RecordPass['readings'][number] => ({
  id, point: `top/${id}`, value: 86_010_000, typed: '86.01', confirmed: false, note: null, supersedes: null, reason: null, by: 'A',
  takenAt: '2030-01-01T08:00:00.000Z', ...changes,
})
// Only what is printed.
const pass = (changes: Partial<RecordPass>): RecordPass => ({
  mark: 'B1', place: 'block', feature: 'bore-1', number: 2, gaugeMark: 'DB', quantity: 'length', state: [], setOn: null, setting: null,
  temperatures: null, material: null, zero: null, isVoid: false, by: 'A', openedAt: '2030-01-01T08:00:00.000Z', readings: [], ...changes,
} as RecordPass)

describe('how a value was measured, on paper', () => {
  it('names pass, setting and a drifted zero', () => {
    const zero = { deviation: 5_000, allowed: 2_540, by: 'A', checkedAt: '2030-01-01T09:00:00.000Z' }
    const words = taken(pass({ setting: { size: 86_000_000, temperature: null }, zero, isVoid: true }), 'millimetre')
    expect(words).toBe('bore-1, pass 2; gauge set to zero on 86.000 mm; zero drifted, does not count: 0.005 mm off, 0.0025 mm allowed, checked by A')
  })
  it('has feelers as an interval, a doubt with the note of whoever stood by it, and a slip with what it was', () => {
    expect(readings(pass({ readings: [value('a', { blades: { stops: 86_020_000 } })] }), 'millimetre'))
      .toBe('top/a 86.010 mm entered, 86.020 mm did not')
    expect(readings(pass({ readings: [value('a', { confirmed: true, note: 'a stub' }), value('b', { confirmed: true })] }), 'millimetre'))
      .toBe('top/a 86.010 mm (unlikely, stood by: a stub); top/b 86.010 mm (unlikely, stood by)')
    const slip = [value('a'), value('b', { point: 'top/a', value: 86_020_000, supersedes: 'a', reason: 'digit doubled' })]
    expect(readings(pass({ readings: slip }), 'millimetre')).toBe('top/a 86.020 mm (corrected from 86.010 mm: digit doubled)')
  })
  it('names the lot that counts and what was typed before it', () => {
    const typed = (lot: string, reason: string, at: string) => ({ lot, reason, by: 'A', at })
    expect(lots({
      mark: 'P1', kind: 'piston', place: null, description: '', lot: 'L2',
      lots: [typed('L1', '', '2030-01-01T08:00:00.000Z'), typed('L2', 'misread', '2030-01-02T08:00:00.000Z')],
    })).toBe('L2; before, L1 until 2030-01-02 08:00 UTC: misread')
  })
})
