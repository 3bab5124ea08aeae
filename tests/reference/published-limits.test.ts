import { describe, expect, it } from 'vitest'
import { formatLength, lengthFormats, parseLength } from '../../packages/domain/src/index.ts'
import { judgePair, type PairToJudge } from './support.ts'
import { publishedLimits } from './tables/wear-limits.ts'

/** One step of the gauge that such limits are read with: 0.0001 in, 0.001 mm. */
const stepOf = { inch: '0.0001', millimetre: '0.001' } as const

describe.each(publishedLimits)('$title ($source): on its limits within, one step past them outside, tolerance 0', ({ values }) => {
  it.each(values)('$item, $unit: $low to $high', ({ unit, low, high }) => {
    const step = parseLength(stepOf[unit], unit)
    const format = unit === 'inch' ? lengthFormats.inchTenths : lengthFormats.millimetreMicrons
    const far = { low: low ?? '-1000', high: high ?? '1000' }
    const pair: PairToJudge = { unit, limits: far }
    const judged = (size: number) => judgePair(pair, formatLength(size, format, 'half-even'), '0')
    for (const [limit, outward, side] of [[low, -step, 'low'], [high, step, 'high']] as const) {
      if (limit === null) continue
      const size = parseLength(limit, unit)
      expect(judged(size)).toMatchObject({ kind: 'within', least: size })
      expect(judged(size + outward)).toMatchObject({ kind: 'outside', side })
    }
  })
})

// US Army TM 10-3930-647-14&P: wear for each inch. Tolerance 0: what is worked out is a whole number of tenths.
describe('wear for each inch of diameter (US Army TM 10-3930-647-14&P; cases computed)', () => {
  const perInch = (diameter: string, share: string) => (parseLength(diameter, 'inch') / 25_400_000) * parseLength(share, 'inch')
  it('a sleeve of 4.000 in may wear 0.001 in an inch: 0.004 in, and no tenth more', () => {
    const wear = perInch('4.000', '0.001')
    expect(wear).toBe(parseLength('0.004', 'inch'))
    const pair: PairToJudge = { unit: 'inch', limits: { low: '0', high: formatLength(wear, lengthFormats.inchTenths, 'half-even') } }
    expect(judgePair(pair, '4.0040', '4.0000').kind).toBe('within')
    expect(judgePair(pair, '4.0041', '4.0000')).toMatchObject({ kind: 'outside', side: 'high' })
  })
  it('a journal of 2.500 in may be 0.0004 in an inch out of round: 0.0010 in', () => {
    expect(perInch('2.500', '0.0004')).toBe(parseLength('0.0010', 'inch'))
  })
})

describe('sets that only selection makes good: the printed fit is narrower than the tolerances (makers’ manuals)', () => {
  // Nissan QG18DE: pin in piston; Yamaha F200: piston in bore. Worst case computed.
  it.each([
    ['pin in piston', ['18.993', '19.005'], ['18.989', '19.001'], ['0.002', '0.006'], ['-0.008', '0.016']],
    ['piston in bore', ['94.00', '94.02'], ['93.921', '93.941'], ['0.075', '0.080'], ['0.059', '0.099']],
  ] as const)('%s: hole %o, shaft %o, printed %o, worst case %o', (_, hole, shaft, printed, worst) => {
    const pair: PairToJudge = { unit: 'millimetre', limits: { low: printed[0], high: printed[1] } }
    expect(judgePair(pair, hole[0], shaft[1])).toMatchObject({ kind: 'outside', least: parseLength(worst[0], 'millimetre') })
    expect(judgePair(pair, hole[1], shaft[0])).toMatchObject({ kind: 'outside', greatest: parseLength(worst[1], 'millimetre') })
  })
})
