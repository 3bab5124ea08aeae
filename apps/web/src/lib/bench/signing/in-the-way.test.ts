import { describe, expect, it } from 'vitest'
import type { OperationSheet } from '../sheet/operation-sheet.ts'
import { bushing, passOver, pin, pinInRod, placed, reading, tenth } from '../testing/samples.ts'
import { judgeSheet } from '../verdicts/judge-sheet.ts'
import { inTheWay, type Here } from './in-the-way.ts'
import { typePin } from './pin.ts'

type Signed = Parameters<typeof inTheWay>[0]

const operation: OperationSheet['operation'] = {
  key: 'hone-small-ends', title: 'Hone small ends', stage: 'machining', bench: 'pin-hone', minutes: 60, after: [], features: [],
  requirements: [pinInRod.key], observations: [{ key: 'oil-hole', title: 'Oil hole open' }], cautions: [], signatures: 1,
}
const seen = { item: 'oil-hole', outcome: 'seen', note: '', since: null, by: 'A', observedAt: '2030-01-01T00:00:00Z' } as const
const done: Signed = {
  job: { id: 'j', number: 1, engineName: 'E', duty: 'street', state: 'open', planRevision: 1 },
  operation, waitsFor: [], requirements: [], observations: [seen], inspections: [], lots: [], findings: [], concessions: [],
}
const here: Here = { verdicts: [], unmeasured: [], waiting: 0, refused: 0, isAway: false }

function verdictsAt(clearance: number) {
  const readings = bushing.points.map(({ key }, index) => reading(`r${index}`, key, clearance))
  return judgeSheet({ features: [bushing, pin], requirements: [pinInRod], placed }, [passOver({ readings })], 'inch')
}

describe('what stands in the way of a signature', () => {
  it('is nothing when all is measured, within, seen and sent', () => {
    expect(inTheWay({ ...done, requirements: [pinInRod] }, { ...here, verdicts: verdictsAt(7 * tenth) })).toEqual([])
  })

  it('is a value outside until it is measured again or the owner accepts it', () => {
    const sheet = { ...done, requirements: [pinInRod] }
    const verdicts = verdictsAt(4 * tenth)
    expect(inTheWay(sheet, { ...here, verdicts })).toEqual(['Pin in rod 1 is outside: measure again, or ask the owner.'])
    const concession = { requirement: pinInRod.key, low: 4 * tenth, high: 4 * tenth, reason: 'Old engine', by: 'Owner' }
    expect(inTheWay({ ...sheet, concessions: [concession] }, { ...here, verdicts })).toEqual([])
  })

  it('is a feature without a full pass of this step', () => {
    expect(inTheWay(done, { ...here, unmeasured: [bushing] })).toEqual(['Not fully measured at this step: Rod 1 small end.'])
  })

  it('is a thing not looked at, and a thing looked for and not seen', () => {
    expect(inTheWay({ ...done, observations: [] }, here)).toEqual(['1 thing is still to be looked at.'])
    expect(inTheWay({ ...done, observations: [{ ...seen, outcome: 'not-seen' }] }, here)).toEqual(['“Oil hole open” was not seen.'])
  })

  it('is an area without a result, or with one that only the owner can let pass', () => {
    const areas = [{ key: 'webs', title: 'Main webs', place: 'block', methods: ['dye-penetrant' as const] }]
    const tested = { ...done, operation: { ...operation, inspections: areas } }
    const result = {
      id: 'i', item: 'webs', mark: 'B1', method: 'dye-penetrant', pressure: null, result: 'indication', note: '',
      inspector: 'A', by: 'A', inspectedAt: '2030-01-01T00:00:00Z', counts: true, conceded: false,
    } as const
    expect(inTheWay(tested, here)).toEqual(['1 area is still to be tested.'])
    expect(inTheWay({ ...tested, inspections: [result] }, here)).toEqual(['Main webs is not sound: only the owner can let it pass.'])
    expect(inTheWay({ ...tested, inspections: [{ ...result, conceded: true }] }, here)).toEqual([])
    expect(inTheWay({ ...tested, inspections: [{ ...result, counts: false }] }, here)).toEqual(['1 area is still to be tested.'])
  })

  it('is a part without lot or serial', () => {
    const lot = { place: 'piston/1', partId: 'p', mark: 'P1', lot: '', history: [] }
    expect(inTheWay({ ...done, lots: [lot] }, here)).toEqual(['1 part has no lot or serial yet.'])
    expect(inTheWay({ ...done, lots: [{ ...lot, lot: 'L' }] }, here)).toEqual([])
  })

  it('is a step before this one, and a value that has not arrived', () => {
    expect(inTheWay({ ...done, waitsFor: [{ key: 'wash', title: 'Wash', marked: false }] }, { ...here, waiting: 2, refused: 1 })).toEqual([
      '“Wash” comes before this and is not signed yet.',
      '2 entries have not reached the server yet.',
      '1 entry was refused: put each right, or away.',
    ])
  })

  it('is neither what waits nor a step marked as signed while there is no network: the step is only marked as well', () => {
    const sheet = { ...done, waitsFor: [{ key: 'wash', title: 'Wash', marked: true }] }
    expect(inTheWay(sheet, { ...here, waiting: 2, isAway: true })).toEqual([])
    expect(inTheWay(sheet, { ...here, waiting: 2 })).toHaveLength(2)
  })

  it('names three of many and counts the rest', () => {
    const many = Array.from({ length: 5 }, (_, index) => ({ ...bushing, title: `Rod ${index + 1} small end` }))
    expect(inTheWay(done, { ...here, unmeasured: many })[0]).toMatch(/Rod 1 .*Rod 3 small end and 2 more\./)
  })
})

describe('a PIN', () => {
  it('takes six digits and no more, and nothing else', () => {
    expect(['1', 'a', '2', '3', '4', '5', '6', '7'].reduce(typePin, '')).toBe('123456')
    expect(typePin('123', 'Backspace')).toBe('12')
  })
})
