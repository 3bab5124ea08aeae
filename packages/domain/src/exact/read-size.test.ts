import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatLength, lengthFormats } from './format-length.ts'
import { readSize, type SizeTyping } from './read-size.ts'

const inch = 25_400_000
const tenth = 2_540
const bore: SizeTyping = {
  unit: 'inch', shape: 'hole', nominal: 4 * inch, setting: { size: 4.03 * inch, sense: 'plus-is-larger' }, readsBlades: false,
}
const journal: SizeTyping = { ...bore, shape: 'shaft', nominal: 2.1 * inch, setting: null }
const gap: SizeTyping = { ...bore, shape: 'gap', nominal: null, setting: null, readsBlades: true }

describe('a comparator that was set to zero', () => {
  it('counts tenths in an inch shop and microns in a metric one, echoed in words', () => {
    expect(readSize('+4', bore)).toMatchObject({ value: 40_304 * tenth, shown: 4 * tenth, echo: '0.0004 in larger than 4.0300 in.' })
    expect(readSize('-1.5', bore)).toMatchObject({ shown: -3_810, echo: '0.00015 in smaller than 4.0300 in.' })
    expect(readSize('0', bore)).toMatchObject({ value: 4.03 * inch, echo: '4.0300 in, as it was set.' })
    const metric = { ...bore, unit: 'millimetre', setting: { size: 102_362_000, sense: 'plus-is-larger' } } as const
    expect(readSize('3', metric)).toMatchObject({ value: 102_365_000, echo: '0.003 mm larger than 102.362 mm.' })
  })
  it('on which clockwise means smaller turns the sign round', () => {
    const clockwise = { ...bore, setting: { size: 4.03 * inch, sense: 'plus-is-smaller' } } as const
    expect(readSize('+4', clockwise)).toMatchObject({ value: 40_296 * tenth, echo: '0.0004 in smaller than 4.0300 in.' })
  })
  it('takes a full size all the same, and a deviation written out in inches', () => {
    expect(readSize('4.0303', bore)).toMatchObject({ value: 40_303 * tenth, shown: 40_303 * tenth, echo: null })
    expect(readSize('102.3697 mm', bore)).toMatchObject({ value: 102_369_700, echo: null })
    expect(readSize('+.0003', bore).value).toBe(40_303 * tenth)
    expect(readSize('3 tenths', bore).value).toBe(40_303 * tenth)
  })
  it('reads every full size of four decimals near its setting as just that', () => {
    fc.assert(fc.property(fc.integer({ min: 25_000, max: 79_000 }), (tenths) => {
      const text = formatLength(tenths * tenth, lengthFormats.inchTenths, 'half-even')
      expect(readSize(text, bore).value).toBe(tenths * tenth)
    }))
  })
})

describe('a journal', () => {
  it('is taken by its last digits and echoed in full', () => {
    expect(readSize('09 95', journal)).toMatchObject({ value: 20_995 * tenth, echo: '2.0995 in.' })
    expect(readSize('2.0995', journal)).toMatchObject({ value: 20_995 * tenth, echo: null })
  })
  it('whose short figure is a size by itself is read as that', () => {
    const metric = { ...journal, unit: 'millimetre', nominal: 44_990_000 } as const
    expect(readSize('45', metric).value).toBe(45_000_000)
    expect(readSize('987', metric)).toMatchObject({ value: 44_987_000, echo: '44.987 mm.' })
  })
  it('has no tail where nothing says what it should be', () => {
    expect(readSize('0995', { ...journal, nominal: null }).value).toBe(995 * inch)
  })
})

describe('feelers', () => {
  it('are an interval, or a minimum where no thicker blade was tried', () => {
    expect(readSize('18/19', gap)).toMatchObject({
      value: 180 * tenth, blades: { stops: 190 * tenth }, echo: '0.0180 in enters, 0.0190 in does not.',
    })
    expect(readSize('15/', gap)).toMatchObject({ value: 150 * tenth, blades: { stops: null }, echo: '0.0150 in enters.' })
  })
  it('leave a fraction of an inch to other gauges', () => {
    expect(readSize('1/4', { ...gap, readsBlades: false })).toMatchObject({ value: inch / 4, blades: null })
  })
})
