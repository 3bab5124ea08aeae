import { describe, expect, it } from 'vitest'
import { nanometresOf } from './length.ts'
import { parseLength } from './parse-length.ts'
import { checkResolution, readableStep } from './resolution.ts'

describe('a reading finer than its gauge', () => {
  const dial = { display: 'analogue', division: nanometresOf(2_540) } as const
  const digital = { display: 'digital', division: nanometresOf(1_000) } as const

  it('is accepted to half a division of a dial, and refused below it', () => {
    expect(() => checkResolution(parseLength('0.00035', 'inch'), dial)).not.toThrow()
    expect(() => checkResolution(parseLength('-0.00035', 'inch'), dial)).not.toThrow()
    expect(() => checkResolution(parseLength('0.00033', 'inch'), dial)).toThrow(
      expect.objectContaining({
        code: 'length-too-fine',
        message: 'This gauge has divisions of 0.0001 in: half a division is the finest that can be read on it.',
      }),
    )
  })
  it('is accepted to one step of a digital display, and refused between two', () => {
    expect(() => checkResolution(parseLength('101.601', 'millimetre'), digital)).not.toThrow()
    expect(() => checkResolution(parseLength('101.6015', 'millimetre'), digital)).toThrow(
      expect.objectContaining({
        code: 'length-too-fine',
        message: 'This gauge counts in steps of 0.001 mm: it cannot show a figure between two of them.',
      }),
    )
  })
  it('is measured against half a division by eye, one step of a display', () => {
    expect(readableStep(dial)).toBe(1_270)
    expect(readableStep(digital)).toBe(1_000)
  })
})
