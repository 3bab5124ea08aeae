import { nanometresOf, type FeatureDefinition } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import { checkValue, type MeasuringContext } from './check-value.ts'

const bore: FeatureDefinition = {
  place: 'block', feature: 'bore-1', title: 'Bore 1', shape: 'hole', quantity: 'length', nominal: 101_600_000,
  points: [], state: [],
}
// an analogue dial of 0.0001 in: half a division, 0.00005 in, is the finest that can be read
const context: MeasuringContext = {
  definition: bore, gauge: { resolution: 2_540, analogue: true }, isSetOnMate: false, expected: null,
  unit: 'inch',
}
const inch = (tenths: number) => nanometresOf(tenths * 2_540)

function codeOf(
  value: number, typed: string, change: Partial<MeasuringContext> = {}, confirmed = false,
): string {
  try {
    checkValue({ value, typed, confirmed }, { ...context, ...change }, 'readings.0.typed')
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
    expect(codeOf(inch(40_003), '+3')).toBe('taken')
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
      codeOf(inch(40_000) + 1_270, '4.00005', { gauge: { resolution: 2_540, analogue: false } }),
    ).toBe('length-too-fine')
  })

  it('is refused in the wrong unit or a thousand times off, whatever is confirmed', () => {
    expect(codeOf(4_000_000, '4 mm', {}, true)).toBe('value-implausible')
    expect(
      codeOf(101_600, '0.1016 mm', { gauge: { resolution: 100, analogue: false } }, true),
    ).toBe('value-implausible')
  })

  it('asks once about a clearance ten times its target, and takes it when the machinist stands by it', () => {
    const setOn = { isSetOnMate: true, expected: inch(7) }
    expect(codeOf(inch(4), '0.0004', setOn)).toBe('taken')
    expect(codeOf(inch(70), '0.0070', setOn)).toBe('value-implausible')
    expect(codeOf(inch(70), '0.0070', setOn, true)).toBe('taken')
  })

  it('is refused as a size of nothing', () => {
    expect(codeOf(0, '0')).toBe('value-out-of-range')
  })
})
