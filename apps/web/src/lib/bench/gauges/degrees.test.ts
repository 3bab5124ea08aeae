import { describe, expect, it } from 'vitest'
import { readDegrees } from './degrees.ts'

describe('a temperature', () => {
  it('is typed in °C, with a point or a comma', () => {
    expect([readDegrees('21'), readDegrees('21.5'), readDegrees('21,25 °C'), readDegrees('−3')]).toEqual([21_000, 21_500, 21_250, -3_000])
  })
  it('that is none, or of no part, is refused with a sentence', () => {
    expect(() => readDegrees('warm')).toThrow(/no temperature/)
    expect(() => readDegrees('300')).toThrow(/between/)
  })
})
