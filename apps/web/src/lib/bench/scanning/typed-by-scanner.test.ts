import fc from 'fast-check'
import { tagPath } from '@tenths/contract'
import { describe, expect, it } from 'vitest'
import { TypedByScanner, type Scanned } from './typed-by-scanner.ts'

/** Types a text and Enter, with a pause before each key. */
function type(text: string, pause: number, scanner = new TypedByScanner()): Scanned | null {
  let at = 0
  for (const key of text) {
    at += pause
    expect(scanner.take(key, at)).toBeNull()
  }
  return scanner.take('Enter', at + pause)
}

describe('what is typed at a bench page', () => {
  it('is a tag when it comes fast and has a tag’s form, whatever job and part', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 999_999 }), fc.string({ minLength: 1, maxLength: 10, unit: 'grapheme-ascii' }), (number, mark) => {
      if (mark.trim() === '') return
      const text = `https://shop.example${tagPath(number, mark)}`
      expect(type(text, 8)).toEqual({ kind: 'tag', text })
    }))
  })

  it('is never a tag nor a foreign code when a gauge types a value', () => {
    fc.assert(fc.property(fc.double({ min: -999, max: 999, noNaN: true }), fc.constantFrom('', 'mm', 'in', '"'), (value, unit) => {
      expect(type(`${value.toFixed(5)}${unit}`, 5)).toEqual({ kind: 'nothing' })
    }))
  })

  it('is a foreign code when it comes fast and is neither', () => {
    for (const text of ['4006381333931', 'https://maker.example/p/12', 'SHELL-STD-4x']) expect(type(text, 8)).toEqual({ kind: 'foreign', text })
  })

  it('is nothing when a hand types it, and a key of before is not taken for the first of a code', () => {
    expect(type(`https://shop.example${tagPath(7)}`, 150)).toEqual({ kind: 'nothing' })
    const scanner = new TypedByScanner()
    scanner.take('x', -5_000)
    expect(type(tagPath(7), 8, scanner)).toEqual({ kind: 'tag', text: '/jobs/7' })
  })
})
