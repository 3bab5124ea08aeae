import { nanometresOf, type FeatureDefinition } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import { checkValue, type MeasuringContext } from './check-value.ts'

const bore: FeatureDefinition = {
  place: 'block', feature: 'bore-1', title: 'Bore 1', shape: 'hole', quantity: 'length', nominal: 101_600_000,
  points: [], state: [],
}
// an analogue dial of 0.0001 in: half a division, 0.00005 in, is the finest that can be read
const dial = { resolution: 2_540, analogue: true, clockwiseIsSmaller: false, kind: 'dial-bore-gauge' }
const context: MeasuringContext = {
  definition: bore, gauge: dial, isSetOnMate: false, settingSize: null, unit: 'inch', doubts: [],
}
const inch = (tenths: number) => nanometresOf(tenths * 2_540)

function codeOf(
  value: number, typed: string, change: Partial<MeasuringContext> = {}, confirmed = false,
  blades?: { readonly stops: number | null }, note: string | null = null,
): string {
  try {
    checkValue({ value, typed, confirmed, note, ...(blades && { blades }) }, { ...context, ...change }, 'readings.0.typed')
    return 'taken'
  } catch (error) {
    expect((error as { field: string }).field).toBe('readings.0.typed')
    return (error as { code: string }).code
  }
}

describe('a typed value', () => {
  it('is taken in inches, millimetres or with its unit named', () => {
    expect(codeOf(inch(40_003), '4.0003')).toBe('taken')
    expect(codeOf(101_600_000, '101.6')).toBe('taken')
    expect(codeOf(101_600_000, '101.6 mm')).toBe('taken')
  })

  it('is taken as a deviation from the size that its gauge was set on, by the gauge’s own sign, and never without one', () => {
    const set = { settingSize: inch(40_000) }
    expect(codeOf(inch(40_003), '+3', set)).toBe('taken')
    expect(codeOf(inch(40_003), '+3', { ...set, gauge: { ...dial, clockwiseIsSmaller: true } })).toBe('value-implausible')
    expect(codeOf(inch(39_997), '+3', { ...set, gauge: { ...dial, clockwiseIsSmaller: true } })).toBe('taken')
    expect(codeOf(inch(40_003), '4.0003', set)).toBe('taken')
    expect(codeOf(inch(40_003), '+3')).toBe('value-implausible')
  })

  it('is taken as the last digits of a journal, or as two blades of a set of feelers', () => {
    expect(codeOf(inch(39_995), '9995', { definition: { ...bore, shape: 'shaft' } })).toBe('taken')
    expect(codeOf(inch(39_995), '9995')).toBe('value-implausible')
    const feelers = { definition: { ...bore, nominal: null }, gauge: { ...dial, kind: 'feeler' } }
    expect(codeOf(inch(180), '18/19', feelers, false, { stops: inch(190) })).toBe('taken')
    expect(codeOf(inch(180), '18/19', feelers, false, { stops: inch(200) })).toBe('value-implausible')
    expect(codeOf(inch(180), '18/19', feelers)).toBe('value-implausible')
  })

  it('is refused when it cannot be read', () => {
    expect(codeOf(inch(40_000), '4.0x')).toBe('length-unreadable')
    expect(codeOf(1_000, 'tight', { definition: { ...bore, quantity: 'torque' } })).toBe('number-unreadable')
  })

  it('is refused when the number beside it is another one', () => {
    expect(codeOf(inch(41_003), '4.0003')).toBe('value-implausible')
    expect(codeOf(101_600_000, '4.1 in')).toBe('value-implausible')
  })

  it('is refused when it is finer than half a division of a dial, or a digit of a display', () => {
    expect(codeOf(inch(40_000) + 1_270, '4.00005')).toBe('taken')
    expect(codeOf(inch(40_000) + 508, '4.00002')).toBe('length-too-fine')
    expect(
      codeOf(inch(40_000) + 1_270, '4.00005', { gauge: { ...dial, analogue: false } }),
    ).toBe('length-too-fine')
  })

  it('that is doubted is taken when somebody stands by it, and beyond belief only with a note', () => {
    const unlikely = { doubts: [{ outcome: 'ask', rule: 'neighbour', sentence: 'Sure?' }] } as const
    expect(codeOf(inch(40_003), '4.0003', unlikely)).toBe('value-implausible')
    expect(codeOf(inch(40_003), '4.0003', unlikely, true)).toBe('taken')
    const absurd = { doubts: [{ outcome: 'block', rule: 'pair', sentence: 'Swapped?' }, ...unlikely.doubts] } as const
    expect(codeOf(inch(40_003), '4.0003', absurd, true)).toBe('value-implausible')
    expect(codeOf(inch(40_003), '4.0003', absurd, true, undefined, ' ')).toBe('value-implausible')
    expect(codeOf(inch(40_003), '4.0003', absurd, true, undefined, 'New piston is still to come.')).toBe('taken')
  })

  it('is refused as a size of nothing', () => {
    expect(codeOf(0, '0')).toBe('value-out-of-range')
  })
})
