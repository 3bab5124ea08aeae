import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import {
  preloadByAngle,
  preloadByStretch,
  preloadByTorque,
  stretchForPreload,
  torqueForPreload,
} from './preload.ts'
import { boltSetVerdict } from './set.ts'
import { boltGrades, boltStrength, preloadAtShare } from './strength.ts'
import { stressArea } from './thread.ts'

const bolt = [
  { length: 25, area: 44 },
  { length: 20, area: 58 },
]
const force = fc.double({ min: 1_000, max: 100_000, noNaN: true })

describe('preload', () => {
  it('comes back from its own torque and from its own stretch', () => {
    fc.assert(
      fc.property(force, (preload) => {
        expect(preloadByTorque(torqueForPreload(preload, 10, 0.16), 10, 0.16) / preload).toBeCloseTo(1, 12)
        expect(
          preloadByStretch(stretchForPreload(preload, bolt, 205_000), bolt, 205_000) / preload,
        ).toBeCloseTo(1, 12)
      }),
    )
  })

  it('by angle on a rigid joint is the preload of a stretch of that advance, and less on a soft one', () => {
    const rigid = preloadByAngle(60_000, 1.5, bolt, 205_000, 0)
    expect(rigid).toBeCloseTo(preloadByStretch(0.25, bolt, 205_000), 6)
    expect(preloadByAngle(60_000, 1.5, bolt, 205_000, 1e-6)).toBeLessThan(rigid)
  })

  it.each([
    ['a thread coarser than its core', () => stressArea({ family: 'metric', diameter: 6, pitch: 4 })],
    ['a grade that no table holds', () => boltStrength('9.9', 10e6)],
    ['a diameter beyond the table', () => boltStrength('SAE 2', 50.8e6)],
    ['more than the whole of proof', () => preloadAtShare(58, boltStrength('10.9', 10e6), 1.2)],
    ['a nut factor of nothing', () => torqueForPreload(1_000, 10, 0)],
    ['a bolt without length', () => stretchForPreload(1_000, [], 205_000)],
    ['a turn too many', () => preloadByAngle(900_000, 1.5, bolt, 205_000, 0)],
  ])('is refused for %s', (_, compute) => {
    expect(compute).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})

describe('the strength of every grade', () => {
  it('rises from proof over yield to tensile', () => {
    for (const grade of boltGrades) {
      const { proof, yield: yields, tensile } = boltStrength(grade, 10e6)
      expect(proof).toBeLessThan(yields)
      expect(yields).toBeLessThan(tensile)
    }
  })
})

describe('a bolt that was tightened before', () => {
  it('is looked at over 0.0005 in of set and scrap over 0.001 in', () => {
    const free = 50_000_000
    expect([0, 12_700, 12_701, 25_400, 25_401].map((set) => boltSetVerdict(free, free + set))).toEqual([
      'reuse',
      'reuse',
      'look',
      'look',
      'scrap',
    ])
  })
})
