import { describe, expect, it } from 'vitest'
import { planInput, v8, v8Parts } from '../testing/engines.ts'
import { canonicalJson } from './canonical-json.ts'
import { changedOperations } from './changes.ts'
import { definitionText } from './definition-text.ts'
import { plan } from './plan.ts'

const input = planInput(v8, v8Parts)
const street = plan(input)

describe('changing a job’s plan', () => {
  it('to another duty changes exactly the operations whose definition differs', () => {
    const boosted = plan({ ...input, duty: 'mild-boost' })
    const { added, removed, changed, same } = changedOperations(street, boosted)
    expect([added, removed]).toEqual([[], []])
    expect(changed).toEqual([
      'crack-test',
      'measure-crank',
      'hone-bores',
      'hone-small-ends',
      'fit-pins',
      'ring-gaps',
      'main-bearings',
      'rod-bearings',
    ])
    expect(changed.length + same.length).toBe(boosted.operations.length)
  })

  it('to a duty with equal figures changes nothing', () => {
    const { changed, same } = changedOperations(street, plan({ ...input, duty: 'restoration' }))
    expect(changed).toEqual([])
    expect(same).toHaveLength(street.operations.length)
  })

  it('to less work names what is removed, and back what is added', () => {
    const less = plan({ ...input, options: { ...input.options, deck: false, crank: 'polish' } })
    expect(changedOperations(street, less)).toMatchObject({
      added: ['polish-crank'],
      removed: ['deck', 'grind-crank'],
    })
    expect(changedOperations(less, street)).toMatchObject({
      added: ['deck', 'grind-crank'],
      removed: ['polish-crank'],
    })
  })

  it('by a rule edit of one fit touches only where that fit is judged', () => {
    const rules = [{ fit: 'pin-in-rod', revision: 1, parameters: { high: 7 * 2_540 }, source: 'the owner' }]
    expect(changedOperations(street, plan({ ...input, rules })).changed).toEqual(['hone-small-ends'])
  })

  it('by a rule that gives the same numbers from another source touches nothing', () => {
    const rules = [{ fit: 'pin-in-rod', revision: 1, parameters: { high: 8 * 2_540 }, source: 'the owner' }]
    expect(changedOperations(street, plan({ ...input, rules })).changed).toEqual([])
  })
})

describe('what a signature stands for', () => {
  it('is one text, equal for equal plans', () => {
    for (const { key } of street.operations) {
      expect(definitionText(plan(structuredClone(input)), key)).toBe(definitionText(street, key))
    }
  })

  it('holds limits, points, things to see and the number of signatures', () => {
    const text: unknown = JSON.parse(definitionText(street, 'hone-small-ends'))
    expect(text).toMatchObject({ operation: 'hone-small-ends', signatures: 1 })
    expect(definitionText(street, 'hone-small-ends')).toContain('"low":7620')
    expect(definitionText(street, 'hone-small-ends')).toContain('rod/8#small-end')
  })

  it('is refused for an operation that the plan does not have', () => {
    expect(() => definitionText(street, 'paint')).toThrow(
      expect.objectContaining({ code: 'feature-unknown' }),
    )
  })
})

describe('canonical text', () => {
  it('orders keys by code unit whatever their order, writes no blanks, leaves out what has no value', () => {
    expect(canonicalJson({ b: [1, 'x', null], a: { z: true, é: 0, Z: -1.5 }, none: undefined })).toBe(
      '{"a":{"Z":-1.5,"z":true,"é":0},"b":[1,"x",null]}',
    )
  })

  it('orders the published sample of RFC 8785', () => {
    // RFC 8785, section 3.2.3: keys sorted by UTF-16 code unit; sample quoted from memory.
    const order = ['\r', '1', '\u0080', 'ö', '€', '😀', '\ufb33']
    const sample = Object.fromEntries(order.toReversed().map((key) => [key, 0]))
    expect(canonicalJson(sample)).toBe(`{${order.map((key) => `${JSON.stringify(key)}:0`).join(',')}}`)
  })

  it('refuses a number that JSON cannot hold', () => {
    expect(() => canonicalJson([Number.NaN])).toThrow(
      expect.objectContaining({ code: 'value-out-of-range' }),
    )
  })
})
