import { describe, expect, it } from 'vitest'
import { parseFeelers } from './parse-feelers.ts'

const thousandths = (count: number) => count * 25_400
const hundredths = (count: number) => count * 10_000

describe('feelers', () => {
  it('are read as called out: one blade enters, the next does not', () => {
    expect(parseFeelers('18/19', 'inch')).toEqual({ enters: thousandths(18), stops: thousandths(19) })
    expect(parseFeelers('0.018 / 0.019', 'inch')).toEqual({ enters: thousandths(18), stops: thousandths(19) })
    expect(parseFeelers('1.5/2', 'inch')).toEqual({ enters: thousandths(1.5), stops: thousandths(2) })
    expect(parseFeelers('10+8/10+9', 'inch')).toEqual({ enters: thousandths(18), stops: thousandths(19) })
    expect(parseFeelers('45/50', 'millimetre')).toEqual({ enters: hundredths(45), stops: hundredths(50) })
    expect(parseFeelers('0,45/1.00', 'millimetre')).toEqual({ enters: hundredths(45), stops: hundredths(100) })
  })
  it('prove a minimum by one blade alone', () => {
    expect(parseFeelers('18', 'inch')).toEqual({ enters: thousandths(18), stops: null })
  })
  it('are refused when unreadable or the wrong way round', () => {
    for (const text of ['', '/', '18/', '/19', '18/19/20', 'tight', '-18/19', '0/1', '18+/19']) {
      expect(() => parseFeelers(text, 'inch')).toThrow(expect.objectContaining({ code: 'length-unreadable' }))
    }
    expect(() => parseFeelers('19/18', 'inch')).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
    expect(() => parseFeelers('18/18', 'inch')).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})
