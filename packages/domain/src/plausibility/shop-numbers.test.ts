import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../errors.ts'
import { changeableNumbers, plausibilityUnits, type ChangeableNumber } from './changeable-numbers.ts'
import { checkPlausibility, type PlausibilitySubject } from './check.ts'
import { starterPlausibilityNumbers } from './numbers.ts'
import { readingKinds, type ReadingContext } from './reading-context.ts'
import { shopNumbersAfter, sayNumber } from './shop-numbers-after.ts'
import { numberAt, numbersWith, type ShopNumbers } from './shop-numbers.ts'

const tenth = 2_540
const numbers = changeableNumbers.flatMap((group) => group.numbers)
const starter = (key: string) => numberAt(starterPlausibilityNumbers, key)

function refusal(changed: ShopNumbers, own: ShopNumbers = {}): DomainError {
  try {
    shopNumbersAfter(own, changed, 'inch')
  } catch (error) {
    if (error instanceof DomainError) return error
    throw error
  }
  throw new Error('It was taken.')
}

describe('a number that the shop sets', () => {
  it('stands in its place and leaves every other as it was', () => {
    for (const { key } of numbers) {
      const changed = numbersWith({ [key]: 7 })
      expect(numbers.filter((other) => numberAt(changed, other.key) !== starter(other.key)).map((other) => other.key)).toEqual([key])
    }
    expect(numbersWith({})).toBe(starterPlausibilityNumbers)
  })
  it('starts between its bounds and in order, whichever it is', () => {
    const all = Object.fromEntries(numbers.map(({ key }) => [key, starter(key)]))
    expect(shopNumbersAfter({}, all, 'inch')).toEqual({})
    expect(new Set(numbers.map(({ key }) => key)).size).toBe(numbers.length)
    expect(new Set(numbers.map(({ unit }) => unit))).toEqual(new Set(plausibilityUnits))
  })
  it('is kept beside the shop’s others, and is the shop’s own no more when it is back at the starter’s', () => {
    const own = shopNumbersAfter({ agreement: 2 }, { 'neighbour.bore.finished': 10 * tenth }, 'inch')
    expect(own).toEqual({ agreement: 2, 'neighbour.bore.finished': 10 * tenth })
    expect(shopNumbersAfter(own, { agreement: 1.5 }, 'inch')).toEqual({ 'neighbour.bore.finished': 10 * tenth })
  })
  it('is refused at its place outside its bounds, in words', () => {
    expect(refusal({ 'neighbour.bore.finished': 0 })).toMatchObject({
      code: 'value-out-of-range', field: 'numbers.neighbour.bore.finished',
      message: '“Beside its neighbours: Bore, after the work” is a figure from 0.00004 in to 0.0500 in.',
    })
    for (const value of [NaN, Infinity, 8.5, 101]) expect(refusal({ 'set.run': value }).field).toBe('numbers.set.run')
    expect(refusal({ 'temperature.part.high': 70_000 }).message).toContain('60.0 °C')
  })
  it('is refused above the one that it must stay below, and the changed one is to blame', () => {
    expect(refusal({ 'range.end-play.low': 25 * 10 * tenth })).toMatchObject({
      field: 'numbers.range.end-play.low',
      message: '“Crankshaft end play, from” (0.0250 in) must lie below “Crankshaft end play, to” (0.0200 in).',
    })
    expect(refusal({ 'neighbour.bore.finished': 40 * tenth }).message).toContain('must not lie above')
    expect(refusal({ 'nominal.block': 10 * 10 * tenth }).field).toBe('numbers.nominal.block')
    // both at once may move past where the other one stood
    expect(shopNumbersAfter({}, { 'range.end-play.low': 250 * tenth, 'range.end-play.high': 400 * tenth }, 'inch'))
      .toEqual({ 'range.end-play.low': 250 * tenth, 'range.end-play.high': 400 * tenth })
  })
  it('is refused when it is none of the shop’s to set', () => {
    for (const key of ['magnitude.unitRatio', 'rodRatio.ask.low', 'constructor', '']) expect(refusal({ [key]: 1 })).toMatchObject({ code: 'rule-unknown' })
  })
  it('is said in the reader’s unit', () => {
    expect(sayNumber(76_200, 'length', 'millimetre')).toBe('0.0762 mm')
    expect(sayNumber(3_000, 'per-diameter', 'inch')).toBe('0.003 of the bore')
    expect(sayNumber(10, 'percent', 'inch')).toBe('10 %')
  })
})

/** Numbers that ask less when they are smaller; all others ask less when they are larger. */
const smallerAsksLess = (key: string) => key.endsWith('.low') || key === 'sign.flippedWithin' || key === 'set.equalWithin'

/** Two sets of numbers, the second at least as wide as the first in every number. */
const narrowAndWide = fc.tuple(...numbers.map(anyNarrowAndWide)).map((pairs) => ({
  narrow: numbersWith(Object.fromEntries(pairs.map(({ key, narrow }) => [key, narrow]))),
  wide: numbersWith(Object.fromEntries(pairs.map(({ key, wide }) => [key, wide]))),
}))

function anyNarrowAndWide({ key, least, most, unit }: ChangeableNumber) {
  const value = unit === 'percent' || unit === 'times'
    ? fc.double({ min: least, max: most, noNaN: true }) : fc.integer({ min: least, max: most })
  return fc.tuple(value, value).map(([one, other]) => {
    const [small, large] = one < other ? [one, other] : [other, one]
    return smallerAsksLess(key) ? { key, narrow: large, wide: small } : { key, narrow: small, wide: large }
  })
}

const near = fc.integer({ min: -60 * tenth, max: 60 * tenth })
const size = near.map((off) => 101_600_000 + off)
const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null })
const anyReading: fc.Arbitrary<ReadingContext> = fc.record({
  kind: fc.constantFrom(...readingKinds), stage: fc.constantFrom('intake', 'finished'),
  value: fc.oneof(size, near, near.map((off) => off * 20)), nominal: orNull(size), neighbours: fc.array(size, { maxLength: 4 }),
  settingSize: orNull(size), dialRevolution: fc.constant(null), previous: orNull(size), isCoated: fc.boolean(),
  mate: fc.constant(null), bore: orNull(fc.constant(101_600_000)),
})
const degrees = fc.integer({ min: -5_000, max: 50_000 })
const anySubject: fc.Arbitrary<PlausibilitySubject> = fc.oneof(
  anyReading.map((reading) => ({ kind: 'reading' as const, reading })),
  fc.record({ values: fc.array(fc.integer({ min: 0, max: 6 }).map((count) => count * tenth), { minLength: 1, maxLength: 12 }), unmachinedBefore: orNull(fc.array(near, { minLength: 1, maxLength: 4 })) })
    .map((set) => ({ kind: 'set' as const, set })),
  fc.record({ part: degrees, gauge: degrees, tolerance: fc.integer({ min: 100, max: 50_000 }), isCorrected: fc.boolean() })
    .map(({ part, gauge, tolerance, isCorrected }) => ({
      kind: 'soak' as const,
      soak: { part: { temperature: part, expansion: 23_100 }, gauge: { temperature: gauge, expansion: 11_500 }, size: 101_600_000, tolerance, isCorrected },
    })),
  fc.integer({ min: 5_000, max: 12_000_000 }).map((value) => ({ kind: 'quantity' as const, quantity: 'pistonMass' as const, value })),
  fc.record({ one: near, other: near, u: fc.integer({ min: 1, max: 5 * tenth }) })
    .map(({ one, other, u }) => ({ kind: 'second-person' as const, one: { value: one, expanded: u }, other: { value: other, expanded: u } })),
)

it('wider numbers never doubt more: whatever they ask or block, narrower ones ask or block as well', () => {
  const weight = { ask: 1, block: 2 } as const
  fc.assert(fc.property(narrowAndWide, anySubject, ({ narrow, wide }, subject) => {
    const narrowly = new Map(checkPlausibility(subject, 'inch', narrow).map(({ rule, outcome }) => [rule, weight[outcome]]))
    for (const { rule, outcome } of checkPlausibility(subject, 'inch', wide)) {
      expect(narrowly.get(rule) ?? 0, rule).toBeGreaterThanOrEqual(weight[outcome])
    }
  }), { numRuns: 2_000 })
})

it('every number that the shop may set changes what is doubted', () => {
  const subjects = fc.sample(anySubject, { numRuns: 8_000, seed: 7 })
  const doubts = (own: ShopNumbers) => subjects.map((subject) => checkPlausibility(subject, 'inch', numbersWith(own)).map(({ rule }) => rule).join())
  const before = doubts({}).join('|')
  // The drift of a zero voids and does not ask.
  for (const { key, least, most } of numbers.filter((number) => number.key !== 'zeroDrift')) {
    const [low, high] = [doubts({ [key]: least }), doubts({ [key]: most })]
    expect([low.join('|'), high.join('|')].some((after) => after !== before), key).toBe(true)
  }
})
