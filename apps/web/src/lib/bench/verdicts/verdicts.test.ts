import { describe, expect, it } from 'vitest'
import { bushing, passOver, pin, pinInRod, placed, reading, tenth } from '../testing/samples.ts'
import { disagreements } from './agreement.ts'
import { concessionFor, isGood } from './concession.ts'
import { judgeSheet } from './judge-sheet.ts'
import { byGravity, dependsOn, gravestKind, matesOf } from './of-feature.ts'

const sheet = { features: [bushing, pin], requirements: [pinInRod], placed }

function judgedAt(clearance: number) {
  const readings = bushing.points.map(({ key }, index) => reading(`r${index}`, key, clearance))
  const [verdict] = judgeSheet(sheet, [passOver({ readings })], 'inch')
  return verdict!
}

describe('a sheet judged in the browser', () => {
  it('finds a tight bushing outside, with how much to take off', () => {
    expect(judgedAt(4 * tenth)).toMatchObject({ kind: 'outside', remedy: { amount: 3 * tenth } })
  })

  it('finds it within after a pass at the target', () => {
    expect(judgedAt(7 * tenth).kind).toBe('within')
  })

  it('says not measured while a point of the pass is missing', () => {
    const [verdict] = judgeSheet(sheet, [passOver({ readings: [reading('r', 'front/along-rod', 7 * tenth)] })], 'inch')
    expect(verdict?.kind).toBe('not-measured')
  })

  it('judges the corrected value, not the slip', () => {
    const readings = [
      reading('a', 'front/along-rod', 70 * tenth), reading('b', 'front/along-rod', 7 * tenth, { supersedes: 'a', reason: 'slip' }),
      reading('c', 'rear/along-rod', 7 * tenth),
    ]
    expect(judgeSheet(sheet, [passOver({ readings })], 'inch')[0]).toMatchObject({ kind: 'within', greatest: 7 * tenth })
  })
})

describe('two judges', () => {
  it('agree when kind, values and side do, whatever unit they word it in', () => {
    const inch = judgedAt(4 * tenth)
    expect(disagreements([inch], [{ ...inch, advice: 'otherwise worded' }])).toEqual([])
  })

  it('are at odds when one of those differs', () => {
    const here = judgedAt(4 * tenth)
    expect(disagreements([here], [judgedAt(7 * tenth)])).toHaveLength(1)
    expect(disagreements([here], [{ ...here, least: 3 * tenth }])).toHaveLength(1)
  })
})

describe('a concession', () => {
  const concession = { requirement: 'pin-in-rod/1', low: 4 * tenth, high: 5 * tenth, reason: 'Drag engine', by: 'Owner' }

  it('covers a value inside its interval, and no other', () => {
    expect(concessionFor(judgedAt(4 * tenth), [concession])).toBe(concession)
    expect(concessionFor(judgedAt(3 * tenth), [concession])).toBeNull()
    expect(isGood(judgedAt(4 * tenth), [concession])).toBe(true)
    expect(isGood(judgedAt(4 * tenth), [])).toBe(false)
  })

  it('never covers another requirement', () => {
    expect(concessionFor(judgedAt(4 * tenth), [{ ...concession, requirement: 'pin-in-rod/2' }])).toBeNull()
  })
})

describe('what a value has a say in', () => {
  it('is every requirement made of its feature, and a gauge can be set on the mate of each', () => {
    expect(dependsOn(pinInRod, pin)).toBe(true)
    expect(dependsOn(pinInRod, { place: 'rod/2', feature: 'small-end' })).toBe(false)
    expect(matesOf([pinInRod], bushing)).toEqual([pin])
    expect(matesOf([pinInRod], pin)).toEqual([bushing])
  })

  it('shows the gravest verdict first', () => {
    expect(gravestKind(['within', 'not-proven', 'not-measured'])).toBe('not-proven')
    expect(gravestKind([])).toBeNull()
    expect((['within', 'not-measured', 'outside', 'not-proven'] as const).toSorted(byGravity))
      .toEqual(['outside', 'not-proven', 'not-measured', 'within'])
  })
})
