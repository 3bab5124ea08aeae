import { describe, expect, it } from 'vitest'
import { parseFeelers, parseLength, parseTail, readSize, type LengthUnit, type SizeTyping } from '../../packages/domain/src/index.ts'

/** Whole nanometres by definition of inch and metre: an inch is 25.4 mm exactly. Tolerance 0 throughout. */
describe('a size however it is legitimately typed', () => {
  it.each<[text: string, unit: LengthUnit, nanometres: number]>([
    ['4 1/32', 'inch', 102_393_750], ['4-1/32', 'inch', 102_393_750], ['63/64', 'inch', 25_003_125], ['63/64"', 'millimetre', 25_003_125],
    ['1/64 in', 'millimetre', 396_875], ['.0005', 'inch', 12_700], ['0,0005 in', 'millimetre', 12_700], ['1,5 mm', 'inch', 1_500_000],
    ['25.4mm', 'inch', 25_400_000], ['25.4 MM', 'inch', 25_400_000], ['1"', 'millimetre', 25_400_000], ["1''", 'millimetre', 25_400_000],
    ['1 inch', 'millimetre', 25_400_000], ['+0.3', 'millimetre', 300_000], ['−1.5', 'micron', -1_500], ['-1.5', 'tenth', -3_810],
    ['- 1.5 µm', 'inch', -1_500], ['12.7 μm', 'inch', 12_700], ['12.7um', 'inch', 12_700], ['12.7 microns', 'inch', 12_700],
    ['1 thou', 'millimetre', 25_400], ['1.5thou', 'inch', 38_100], ['2 thous', 'inch', 50_800], ['1 thousandth', 'inch', 25_400],
    ['3 tenths', 'inch', 7_620], ['1/2 thou', 'inch', 12_700], ['102 millimetres', 'inch', 102_000_000],
    ['102 millimeters', 'inch', 102_000_000], ['5.', 'millimetre', 5_000_000], ['\t4.0000 in. ', 'millimetre', 101_600_000],
    ['007', 'thousandth', 177_800],
  ])('%s, the unit being %s, is %d nm', (text, unit, nanometres) => {
    expect(parseLength(text, unit)).toBe(nanometres)
  })
  it.each<[fraction: string, decimal: string]>([
    ['1/64', '0.015625'], ['1/32', '0.03125'], ['3/64', '0.046875'], ['1/16', '0.0625'], ['7/64', '0.109375'], ['5/32', '0.15625'],
    ['11/64', '0.171875'], ['9/32', '0.28125'], ['13/32', '0.40625'], ['31/64', '0.484375'], ['47/64', '0.734375'], ['31/32', '0.96875'],
  ])('%s in is %s in (chart of decimal equivalents)', (fraction, decimal) => {
    expect(parseLength(fraction, 'inch')).toBe(parseLength(decimal, 'inch'))
  })
  it.each(['', '4 in 3', '4..0', '1.2.3', '4,000.5', '1/0', '5 mil', '12 parsecs', 'four', '1e3', '0x10', '--1', 'NaN', '½'])(
    '“%s” is refused in words: it is none, or could mean two things', (text) => {
      expect(() => parseLength(text, 'inch')).toThrow(expect.objectContaining({ code: 'length-unreadable' }))
    })
  it('1/128 in is no whole number of nanometres and is refused as that', () => {
    expect(() => parseLength('1/128', 'inch')).toThrow(expect.objectContaining({ code: 'length-not-exact' }))
  })
})

describe('less than the whole size', () => {
  const inch = 25_400_000
  const tenth = 2_540
  const journal: SizeTyping = { unit: 'inch', shape: 'shaft', nominal: 2.1 * inch, setting: null, readsBlades: false }
  it.each(['09 95', '0995', '995', '9950', '2.0995', '2.0995 in'])('“%s” on a journal of 2.1000 in is 2.0995 in', (text) => {
    expect(readSize(text, journal).value).toBe(20_995 * tenth)
  })
  it('a metric journal of 53.340 mm by its last three digits', () => {
    expect(parseTail('328', 53_340_000 as ReturnType<typeof parseLength>, 'millimetre')).toMatchObject({ size: 53_328_000, echo: '53.328 mm' })
  })
  it.each(['18/19', '.018/.019', '18 / 19', '10+8/10+9'])('feelers “%s” are a gap from 0.018 to under 0.019 in', (text) => {
    expect(parseFeelers(text, 'inch')).toEqual({ enters: 457_200, stops: 482_600 })
  })
  it('metric feelers “40/45” are 0.40 to under 0.45 mm, “0,40/0,45” as well', () => {
    for (const text of ['40/45', '0,40/0,45']) {
      expect(parseFeelers(text, 'millimetre')).toEqual({ enters: 400_000, stops: 450_000 })
    }
  })
  it.each([['+0.3', 762], ['−1.5', -3_810], ['-1.5 tenths', -3_810], ['+.0003', 7_620], ['3 µm', 3_000]])(
    'a comparator set to 4.0300 in that shows “%s” is %d nm off it', (text, off) => {
      const bore: SizeTyping = { ...journal, shape: 'hole', nominal: 4.03 * inch, setting: { size: 4.03 * inch, sense: 'plus-is-larger' } }
      expect(readSize(text, bore).shown).toBe(off)
    })
})
