import { describe, expect, it } from 'vitest'
import { checkPlausibility, type PlausibilitySubject } from './check.ts'
import { starterPlausibilityNumbers } from './numbers.ts'
import type { ReadingContext } from './reading-context.ts'

const tenth = 2_540
const inch = 25_400_000
const bore: ReadingContext = {
  kind: 'bore', stage: 'finished', value: 4.03 * inch, nominal: 4 * inch, neighbours: [4.03 * inch, 4.0301 * inch, 4.0299 * inch],
  settingSize: null, dialRevolution: null, previous: null, isCoated: false, mate: null, bore: null,
}
const clearance = { ...bore, nominal: null, neighbours: [] }
const rules = (subject: PlausibilitySubject) => checkPlausibility(subject, 'inch').map(({ rule, outcome }) => `${rule} ${outcome}`)
const of = (change: Partial<ReadingContext>, base = bore) => rules({ kind: 'reading', reading: { ...base, ...change } })

describe('a reading', () => {
  it('that agrees with its neighbours and an oversize is not doubted', () => expect(of({})).toEqual([]))
  it('in the wrong unit, or with its point displaced, is blocked and nothing else is said', () => {
    expect(of({ value: Math.floor(4.03 * inch / 25.4) })).toEqual(['unit block'])
    expect(of({ value: 0.403 * inch })).toEqual(['decimal-place block'])
  })
  it('one thimble turn from its neighbours is asked about', () => {
    expect(of({ value: 4.055 * inch })).toContain('thimble-turn ask')
    expect(of({ value: 4.03 * inch + 500_000 })).toContain('thimble-turn ask')
    expect(of({ value: 4.04 * inch })).not.toContain('thimble-turn ask')
  })
  it('one turn of the dial from its neighbours is asked about', () => {
    expect(of({ value: 4.0402 * inch, dialRevolution: 100 * tenth })).toContain('dial-revolution ask')
    expect(of({ value: 4.037 * inch, dialRevolution: 100 * tenth })).not.toContain('dial-revolution ask')
  })
  it('that would agree with the other sign is asked about', () => {
    const low = { neighbours: [4.0296 * inch], settingSize: 4.03 * inch }
    expect(of({ ...low, value: 4.0304 * inch })).toEqual(['sign ask'])
    expect(of({ ...low, value: 4.0297 * inch })).toEqual([])
  })
  it('far from its neighbours is measured again: farther at intake, where wear is real', () => {
    expect(of({ value: 4.03 * inch + 9 * tenth })).toEqual(['neighbour ask'])
    expect(of({ value: 4.03 * inch + 9 * tenth, stage: 'intake' })).toEqual([])
    expect(of({ value: 4.03 * inch + 31 * tenth, stage: 'intake' })).toEqual(['neighbour ask'])
    expect(of({ kind: 'pin', nominal: null, value: 4.03 * inch + 4 * tenth })).toEqual(['neighbour ask'])
  })
  it('of a bore away from every oversize is asked about, and blocked when far away', () => {
    expect(of({ neighbours: [], value: 4.0125 * inch })).toEqual([])
    expect(of({ neighbours: [], value: 4.05 * inch })).toEqual(['nominal ask'])
    expect(of({ neighbours: [], value: 4.05 * inch, stage: 'intake' })).toEqual([])
    expect(of({ neighbours: [], value: 4.2 * inch })).toEqual(['nominal block'])
  })
  it('of metal that grew is asked about, unless it was coated', () => {
    const grown = { previous: 4.0303 * inch }
    expect(of(grown)).toEqual(['growth ask'])
    expect(of({ ...grown, isCoated: true })).toEqual([])
    const journal = { kind: 'journal', nominal: null, neighbours: [] } as const
    expect(of({ ...journal, previous: 4.0297 * inch })).toEqual(['growth ask'])
    expect(of({ ...journal, previous: 4.031 * inch })).toEqual([])
    expect(of({ kind: 'piston', nominal: 4.0275 * inch, neighbours: [] })).toEqual(['growth ask'])
  })
  it('that leaves no clearance with its mate is blocked', () => {
    expect(of({ mate: { shape: 'shaft', value: 4.03 * inch } })).toEqual(['pair block'])
    expect(of({ mate: { shape: 'shaft', value: 4.026 * inch } })).toEqual([])
    expect(of({ kind: 'pin', nominal: null, mate: { shape: 'hole', value: 4.02 * inch } })).toEqual(['pair block'])
  })
  it.each([
    ['ring-side-clearance', 4, 20], ['end-play', 250, 60], ['rod-side-clearance', 20, 150], ['bolt-stretch', 54_000, 60],
    ['oil-clearance', 65, 20], ['deck-clearance', -301, -290],
  ] as const)('of %s is asked about outside its usual range', (kind, unusual, usual) => {
    expect(of({ kind, value: unusual * tenth }, clearance)).toEqual(['range ask'])
    expect(of({ kind, value: usual * tenth }, clearance)).toEqual([])
  })
  it('of a ring gap goes by its bore', () => {
    expect(of({ kind: 'ring-gap', bore: 4 * inch, value: 180 * tenth }, clearance)).toEqual([])
    expect(of({ kind: 'ring-gap', bore: 4 * inch, value: 110 * tenth }, clearance)).toEqual(['range ask'])
    expect(of({ kind: 'ring-gap', bore: null, value: 110 * tenth }, clearance)).toEqual([])
  })
  it('is measured by the shop’s own numbers', () => {
    const strict = { ...starterPlausibilityNumbers, neighbour: { bore: { intake: 1, finished: 1 } } }
    const reading = { ...bore, value: 4.03 * inch + tenth }
    expect(checkPlausibility({ kind: 'reading', reading }, 'inch', strict).map(({ sentence }) => sentence))
      .toEqual(['0.0001 in from the middle of its neighbours: measure it again.'])
  })
})

describe('a set', () => {
  const set = (values: readonly number[], unmachinedBefore: readonly number[] | null = null) =>
    rules({ kind: 'set', set: { values, unmachinedBefore } })
  it('that moved as a whole with nothing machined asks for the zero', () => {
    expect(set([100, 3 * tenth], [6 * tenth, 9 * tenth])).toEqual(['offset ask'])
    expect(set([0, 3 * tenth], [4 * tenth, 7 * tenth])).toEqual([])
    expect(set([])).toEqual([])
  })
  it('that is all alike, or repeats one value eight times, looks copied', () => {
    expect(set([10, 10, 10, 10])).toEqual(['copied ask'])
    expect(set([10, 10, 10])).toEqual([])
    expect(set([0, tenth * 2, ...Array<number>(8).fill(5), 7])).toEqual(['copied ask'])
    expect(set([0, tenth * 2, ...Array<number>(7).fill(5), 7])).toEqual([])
  })
})

describe('figures of the engine', () => {
  it('a rod too short or long for its stroke is asked about, then blocked', () => {
    const ratio = (rodLength: number) => rules({ kind: 'rod-ratio', rodLength, stroke: 100 })
    expect([ratio(164), ratio(130), ratio(230), ratio(110), ratio(300)]).toEqual(
      [[], ['rod-ratio ask'], ['rod-ratio ask'], ['rod-ratio block'], ['rod-ratio block']])
  })
  it('a chamber, piston or torque that no engine has is asked about', () => {
    expect(rules({ kind: 'quantity', quantity: 'chamber', value: 64_000 })).toEqual([])
    expect(rules({ kind: 'quantity', quantity: 'chamber', value: 640_000 })).toEqual(['range ask'])
    expect(rules({ kind: 'quantity', quantity: 'pistonMass', value: 90_000 })).toEqual(['range ask'])
    expect(rules({ kind: 'quantity', quantity: 'torque', value: 400_000 })).toEqual(['range ask'])
  })
  it('a torque in another unit than the specified one is asked about', () => {
    for (const value of [12, 1 / 12, 1.356, 1 / 1.356]) {
      expect(rules({ kind: 'torque', value: value * 61_012, specified: 61_012 })).toEqual(['torque-unit ask'])
    }
    expect(rules({ kind: 'torque', value: 63_000, specified: 61_012 })).toEqual([])
  })
})

describe('how it was measured', () => {
  const body = (temperature: number, expansion: number) => ({ temperature, expansion })
  const soak = (part: number, gauge: number, isCorrected = false) => rules({
    kind: 'soak',
    soak: { part: body(part, 23_100), gauge: body(gauge, 11_500), size: 100_000_000, tolerance: 20_000, isCorrected },
  })
  it('a part that is not soaked with its gauge is doubted', () => {
    expect(soak(20_500, 20_000)).toEqual([])
    expect(soak(23_000, 20_000)).toEqual(['soak ask', 'expansion ask'])
    expect(soak(23_000, 20_000, true)).toEqual(['soak ask'])
    expect(soak(36_000, 35_500, true)).toEqual(['part-temperature ask'])
  })
  it('another number than the scanned tag’s is blocked', () => {
    expect(rules({ kind: 'position', typed: 3, scanned: 5 })).toEqual(['position block'])
    expect(rules({ kind: 'position', typed: 3, scanned: 3 })).toEqual([])
  })
  it('one key stroke in two cells is asked about', () => {
    const sent = (second: number, milliseconds: number) => rules({ kind: 'double-send', first: 7, second, milliseconds })
    expect([sent(7, 120), sent(7, 400), sent(8, 120)]).toEqual([['double-send ask'], [], []])
  })
  it('two people must agree within one and a half times their joint uncertainty', () => {
    const pair = (value: number) => rules({
      kind: 'second-person', one: { value: 0, expanded: 3 }, other: { value, expanded: 4 } })
    expect([pair(7.5), pair(7.6)]).toEqual([[], ['agreement ask']])
  })
})

it('what blocks is said before what asks', () => {
  expect(of({ previous: 4.04 * inch, mate: { shape: 'shaft', value: 4.03 * inch } })).toEqual(['pair block', 'growth ask'])
})
