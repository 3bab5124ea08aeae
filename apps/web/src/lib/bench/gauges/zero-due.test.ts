import { describe, expect, it } from 'vitest'
import { passOver, reading } from '../testing/samples.ts'
import { zerosDue } from './zero-due.ts'

const setting = { size: 23_565_000, temperature: null }
const taken = passOver({ setting, readings: [reading('a', 'front/along-rod', 1, { takenAt: '2030-01-01T08:00:00Z' })] })
const at = (checkedAt: string) => ({ deviation: 0, allowed: 2_540, by: 'A', checkedAt })
const due = (change: Parameters<typeof passOver>[0]) => zerosDue([{ ...taken, ...change }], 'hone-small-ends').map(({ gaugeMark }) => gaugeMark)

describe('the zero of a comparator', () => {
  it('is to be checked after it was read, and no more once it was', () => {
    expect(due({})).toEqual(['PG-1'])
    expect(due({ zero: at('2030-01-01T08:30:00Z') })).toEqual([])
    expect(due({ zero: at('2030-01-01T07:30:00Z') })).toEqual(['PG-1'])
  })
  it('is nobody’s matter where no size was set, at another step, or of a void pass', () => {
    expect(due({ setting: null })).toEqual([])
    expect(due({ operationKey: 'measure-rods' })).toEqual([])
    expect(due({ isVoid: true })).toEqual([])
  })
})
