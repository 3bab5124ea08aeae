import { describe, expect, it } from 'vitest'
import { bushing, pinGauge, pinInRod, tenth } from '../testing/samples.ts'
import { tooCoarse } from './too-coarse.ts'

describe('a gauge too coarse for the limits', () => {
  it('is named as the cause before anything is read', () => {
    // limits 0.0004 in apart: U = 2u must be 0.0002 in at most
    expect(tooCoarse({ ...pinGauge, standardUncertainty: tenth }, bushing, [pinInRod], 'inch')).toBeNull()
    expect(tooCoarse({ ...pinGauge, standardUncertainty: tenth + 1 }, bushing, [pinInRod], 'inch'))
      .toBe('PG-1 is too coarse for Pin in rod 1: its limits are 0.0004 in apart, and every value will be not proven. Take a finer gauge.')
  })
  it('is nobody’s matter under simple acceptance', () => {
    expect(tooCoarse({ ...pinGauge, standardUncertainty: 9 * tenth }, bushing, [{ ...pinInRod, guard: { kind: 'none' } }], 'inch')).toBeNull()
  })
})
