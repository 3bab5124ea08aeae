import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nanometresOf } from './length.ts'
import { parseLength } from './parse-length.ts'
import { isTail, parseTail } from './parse-tail.ts'

const inch = (text: string) => parseLength(text, 'inch')
const unreadable = expect.objectContaining({ code: 'length-unreadable' })

describe('a journal typed by its last digits', () => {
  it('is resolved to the size nearest nominal and echoed in full', () => {
    for (const text of ['09 95', '0995', '995', '95', '9950', '09950']) {
      expect(parseTail(text, inch('2.1000'), 'inch')).toEqual({ size: inch('2.0995'), echo: '2.0995 in' })
    }
    expect(parseTail('9985', inch('2.1'), 'inch').echo).toBe('2.09985 in')
    expect(parseTail('03', inch('2.1'), 'inch').size).toBe(inch('2.1003'))
    expect(parseTail('988', parseLength('54.000', 'millimetre'), 'millimetre').echo).toBe('53.988 mm')
    expect(parseTail('9885', parseLength('54.000', 'millimetre'), 'millimetre').echo).toBe('53.9885 mm')
  })
  it('is refused when two sizes are equally near, or none is near', () => {
    expect(() => parseTail('50', inch('2.1'), 'inch')).toThrow(unreadable)
    expect(() => parseTail('5000', inch('2.1'), 'inch')).toThrow(unreadable)
  })
  it('is not mixed up with a full size', () => {
    for (const text of ['2.0995', '5', '-95', '95 mm', '', '1/64', '1234567', '09  95']) {
      expect(isTail(text)).toBe(false)
      expect(() => parseTail(text, inch('2.1'), 'inch')).toThrow(unreadable)
    }
  })
  it('comes back whatever the size, as long as it lies within half a period of nominal', () => {
    fc.assert(fc.property(fc.integer({ min: 5_000, max: 50_000 }), fc.integer({ min: -490, max: 490 }), (tenths, off) => {
      const size = (tenths + off) * 2_540
      const digits = String(tenths + off).slice(-3).padStart(3, '0')
      expect(parseTail(digits, nanometresOf(tenths * 2_540), 'inch').size).toBe(size)
    }))
  })
})
