import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalText, textHash } from './canonical.ts'
import { chainFaults, sealHash, type StoredSeal } from './chain.ts'

function chainOf(payloads: readonly string[]): StoredSeal[] {
  let previous = ''
  return payloads.map((payload, index) => {
    const seal = { number: index + 1, payload, previous, hash: sealHash(previous, payload) }
    previous = seal.hash
    return seal
  })
}

const endOf = (seals: readonly StoredSeal[]) => ({ count: seals.length, head: seals.at(-1)?.hash ?? '' })
const chain = chainOf(['{"a":"one two"}', '{"b":2}', '{"c":3}', '{"d":4}'])
const alter = (number: number, change: Partial<StoredSeal>) =>
  chain.map((seal) => (seal.number === number ? { ...seal, ...change } : seal))

describe('a chain of seals', () => {
  it('holds when nothing was touched, also while it is empty', () => {
    expect(chainFaults(chain, endOf(chain))).toEqual([])
    expect(chainFaults([], { count: 0, head: '' })).toEqual([])
  })

  it('names the seal whose payload lost a blank', () => {
    const faults = chainFaults(alter(1, { payload: '{"a":"onetwo"}' }), endOf(chain))
    expect(faults).toEqual([{ number: 1, sentence: 'its bytes are not those that were sealed' }])
  })

  it('shows a seal that was altered together with its own hash, at the next one', () => {
    const payload = '{"b":3}'
    const faults = chainFaults(
      alter(2, { payload, hash: sealHash(chain[1]!.previous, payload) }), endOf(chain),
    )
    expect(faults.map(({ number }) => number)).toEqual([3])
  })

  it('shows two seals whose places were swapped', () => {
    const [first, second, third, fourth] = chain as [StoredSeal, StoredSeal, StoredSeal, StoredSeal]
    const swapped = [first, { ...third, number: 2 }, { ...second, number: 3 }, fourth]
    expect(chainFaults(swapped, endOf(chain)).map(({ number }) => number)).toEqual([2, 3, 4])
  })

  it('shows a tail that was cut off', () => {
    const faults = chainFaults(chain.slice(0, 3), endOf(chain))
    expect(faults).toHaveLength(2)
    expect(faults[0]).toEqual({ number: 4, sentence: 'the job counts 4 seals, 3 are there' })
  })

  it('shows a seal that was taken out of the middle', () => {
    const faults = chainFaults(chain.filter(({ number }) => number !== 2), endOf(chain))
    expect(faults.map(({ number }) => number)).toContain(3)
  })

  it('cannot be altered by one character anywhere without a fault', () => {
    fc.assert(fc.property(
      fc.array(fc.string({ minLength: 1 }), { minLength: 1, maxLength: 6 }), fc.nat(), fc.nat(),
      (payloads, which, where) => {
        const seals = chainOf(payloads)
        const index = which % seals.length
        const seal = seals[index]!
        const at = where % seal.payload.length
        const changed = `${seal.payload.slice(0, at)}${seal.payload[at] === 'x' ? 'y' : 'x'}${seal.payload.slice(at + 1)}`
        const altered = seals.map(
          (other, position) => (position === index ? { ...other, payload: changed } : other),
        )
        return chainFaults(altered, endOf(seals)).some(({ number }) => number === index + 1)
      },
    ))
  })
})

describe('canonical text', () => {
  it('is the same whatever order the keys were written in', () => {
    expect(canonicalText({ b: 1, a: [1.0, 'µ'] })).toBe('{"a":[1,"µ"],"b":1}')
    expect(canonicalText({ b: 1, a: 2 })).toBe(canonicalText({ a: 2, b: 1 }))
  })

  it('refuses a number that JSON cannot say', () => {
    expect(() => canonicalText({ a: Number.NaN })).toThrow()
  })

  // FIPS 180-4 example: SHA-256 of "abc"
  it('is hashed with SHA-256', () => {
    expect(textHash('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  })
})
