import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bigEndWeight, pistonWeight } from '../features/references.ts'
import { plan } from '../plan/plan.ts'
import { asMeasured, verdictOn } from '../testing/as-measured.ts'
import { inlineFour, metricParts, planInput, single, v8, v8Parts } from '../testing/engines.ts'

const made = plan(planInput(v8, v8Parts))
const four = plan(planInput(inlineFour, metricParts))

const pistons = (of: readonly number[]) => of.map((mass, index) => [pistonWeight(index + 1), mass] as const)

describe('a set of pistons', () => {
  const weighed = asMeasured(made, pistons([520_400, 521_000, 521_500, 521_400, 520_900, 521_300, 520_800, 520_500]))

  it('is matched where none is more than 1 g over the lightest, the limit included', () => {
    expect(verdictOn(made, 'piston-weight/1', weighed)).toMatchObject({ kind: 'within', least: 0 })
    expect(verdictOn(made, 'piston-weight/4', weighed)).toMatchObject({ kind: 'within', least: 1_000 })
  })

  it('says of a heavy one how much comes off, and where, to match the lightest and not only the limit', () => {
    const { kind, remedy } = verdictOn(made, 'piston-weight/3', weighed)
    expect(kind).toBe('outside')
    expect(remedy).toMatchObject({ action: 'lighten', amount: 1_100, feature: pistonWeight(3), reaches: 'target' })
    expect(remedy?.sentence).toMatch(/^Take 1\.1 g off, to bring the weight of piston 3 down to the lightest of its set\. Off the /)
  })

  it('is not measured before the last of it is weighed, because that one may be the lightest', () => {
    const seven = asMeasured(made, pistons([520_400, 521_000, 521_500, 521_400, 520_900, 521_300, 520_800]))
    expect(verdictOn(made, 'piston-weight/3', seven)).toMatchObject({
      kind: 'not-measured', missing: ['piston/8#weight@scales/weight'],
    })
  })

  it('carries the uncertainty of both weighings', () => {
    expect(verdictOn(made, 'piston-weight/3', weighed).uncertainty).toBeCloseTo(2 * Math.SQRT2 * 10, 9)
  })

  it('is all alike once every remedy is done', () => {
    const masses = fc.array(fc.integer({ min: 150_000, max: 1_200_000 }), { minLength: 4, maxLength: 4 })
    fc.assert(fc.property(masses, (before) => {
      const first = asMeasured(four, pistons(before))
      const after = before.map((mass, index) => mass - (verdictOn(four, `piston-weight/${index + 1}`, first).remedy?.amount ?? 0))
      const then = asMeasured(four, pistons(after))
      for (const [index, mass] of after.entries()) {
        expect(mass).toBeLessThanOrEqual(before[index] ?? 0)
        expect(verdictOn(four, `piston-weight/${index + 1}`, then).kind).toBe('within')
      }
      expect(Math.min(...after)).toBe(Math.min(...before))
    }), { numRuns: 40 })
  })
})

describe('what is matched', () => {
  it('is pistons, pins and both rod ends, each at the balancer; a part without a like has no match', () => {
    const fits = (of: typeof made) => [...new Set(of.requirements.flatMap(({ fit }) => (/weight/.test(fit) ? [fit] : [])))]
    expect(fits(made)).toEqual(['piston-weight', 'pin-weight', 'big-end-weight', 'small-end-weight'])
    expect(fits(plan(planInput(single, metricParts)))).toEqual([])
  })

  it('takes the shop’s own spread', () => {
    const rules = [{ fit: 'big-end-weight', revision: 1, parameters: { spread: 500 }, source: 'the shop' }]
    const strict = plan(planInput(v8, v8Parts, { rules }))
    const ends = asMeasured(strict, Array.from({ length: 8 }, (_, index) => [bigEndWeight(index + 1), index === 2 ? 412_600 : 412_000] as const))
    expect(verdictOn(strict, 'big-end-weight/3', ends).kind).toBe('outside')
  })
})
