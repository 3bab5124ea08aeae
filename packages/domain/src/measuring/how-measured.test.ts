import { describe, expect, it } from 'vitest'
import { howMeasured, type PassAsTaken } from './how-measured.ts'

const plain: PassAsTaken = { setting: null, temperatures: null, material: null, zero: null, isVoid: false, readings: [{ value: 100_000_000 }] }
const setting = { size: 86_000_000, temperature: 21_500 }
const said = (changes: Partial<PassAsTaken>) => howMeasured({ ...plain, ...changes }, 'millimetre').join('; ')

describe('how a pass was taken', () => {
  it('says nothing of a gauge that reads sizes in a room that nobody told of', () => {
    expect(howMeasured(plain, 'inch')).toEqual([])
  })
  it('names the setting size and how warm that was, and that nobody looked at the zero afterwards', () => {
    expect(said({ setting })).toBe('gauge set to zero on 86.000 mm at 21.5 °C; zero not checked afterwards')
  })
  it('tells a good zero from a drifted one, and from one that was good again too late', () => {
    const zero = (deviation: number) => ({ deviation, allowed: 2_540, by: 'A' })
    expect(said({ setting, zero: zero(-1_000) })).toContain('zero good: 0.001 mm off, 0.0025 mm allowed, checked by A')
    expect(said({ setting, zero: zero(5_000), isVoid: true })).toContain('zero drifted, does not count: 0.005 mm off')
    expect(said({ setting, zero: zero(0), isVoid: true })).toContain('zero drifted before, does not count')
  })
  it('tells by how much a warm part was corrected, or that it was taken as read', () => {
    const temperatures = { part: 30_000, room: 20_000 }
    // grey iron grows about 1 µm in 100 mm for each °C
    expect(said({ temperatures, material: 'grey-iron' })).toMatch(/^part 30.0 °C, room 20.0 °C, corrected to 20 °C by −0\.0\d+ mm as grey iron$/)
    expect(said({ temperatures })).toBe('part 30.0 °C, room 20.0 °C, taken as read')
  })
})
