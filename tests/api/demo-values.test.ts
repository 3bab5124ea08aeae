import fc from 'fast-check'
import { parseLength, parseQuantity } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import { gaugeOf, gauges } from '../../prisma/demo/gauges.ts'
import { idOf } from '../../prisma/demo/identity.ts'
import { scatterOf } from '../../prisma/demo/scatter.ts'
import { readingStep, roundInto, typeValue } from '../../prisma/demo/typing.ts'

const careful = { leadingNought: true }
const hasty = { leadingNought: false }

describe('values of the demo shop', () => {
  it('are the same on every machine and every day: chance follows from a name', () => {
    const draw = (name: string) => {
      const scatter = scatterOf(name, 1)
      return [scatter.between(0, 100), scatter.bell(), scatter.pick(['a', 'b', 'c'])]
    }
    expect(draw('bore-3')).toEqual(draw('bore-3'))
    expect(draw('bore-3')).not.toEqual(draw('bore-4'))
    // Drawn once and written down: another generator, or another seed, shows here.
    expect(scatterOf('bore-3', 1).between(0, 1_000_000)).toBeCloseTo(200120.0073864311, 3)
    expect(idOf('job', 'collected')).toBe('c093c005-fd48-8378-976b-25976eb7b87a')
    expect(idOf('job', 'collected')).not.toBe(idOf('job', 'winch'))
  })

  it('are typed as people type, and mean exactly the length that was read', () => {
    const micrometer = gaugeOf('M1')
    expect(typeValue('length', 23_012_400, micrometer, careful)).toEqual({ typed: '0.9060', value: 23_012_400 })
    expect(typeValue('length', 23_013_670, micrometer, careful)).toEqual({ typed: '0.90605', value: 23_013_670 })
    expect(typeValue('length', 469_900, gaugeOf('FB1'), hasty)).toEqual({ typed: '.0185', value: 469_900 })
    expect(typeValue('length', 81_938_000, gaugeOf('MM4'), careful)).toEqual({ typed: '81.938 mm', value: 81_938_000 })
    const torque = typeValue('torque', 84_000, gaugeOf('TW1'), careful)
    expect(torque).toEqual({ typed: '62 lbf·ft', value: parseQuantity('62 lbf·ft', 'poundForceFoot') })
  })

  it('are never finer than the gauge shows, and stay in the window when there is room for one step', () => {
    const lengths = gauges.filter(({ quantity }) => quantity === 'length')
    fc.assert(fc.property(
      fc.constantFrom(...lengths), fc.integer({ min: -1_000_000, max: 200_000_000 }), fc.integer({ min: 0, max: 400_000 }),
      fc.double({ min: -1, max: 2, noNaN: true }),
      (gauge, low, room, along) => {
        const step = readingStep(gauge, room)
        const value = roundInto(low + along * room, step, low, low + room)
        expect(value % (gauge.analogue ? gauge.resolution / 2 : gauge.resolution)).toBeCloseTo(0)
        if (room >= step) {
          expect(value).toBeGreaterThanOrEqual(low)
          expect(value).toBeLessThanOrEqual(low + room)
        }
        const { typed } = typeValue('length', value, gauge, careful)
        expect(parseLength(typed, 'inch')).toBe(value)
      },
    ))
  })
})
