import { createHash } from 'node:crypto'

/** A link of a job's chain, as it is stored. */
export interface StoredSeal {
  readonly number: number
  readonly payload: string
  /** Hash of the seal before it; empty for the first. */
  readonly previous: string
  readonly hash: string
}

/** How many seals the job says it has, and the hash of the last. */
export interface ChainEnd {
  readonly count: number
  readonly head: string
}

/**
 * Something that does not hold, at one seal; `number` is past the last one where seals are missing at the
 * end.
 */
export interface ChainFault {
  readonly number: number
  readonly sentence: string
}

/**
 * Hash of a seal: SHA-256 over the previous seal's hash and the payload's exact bytes. The line feed between
 * them keeps the first seal, which has none before it, from reading like another.
 */
export function sealHash(previous: string, payload: string): string {
  return createHash('sha256').update(`${previous}\n`, 'utf8').update(payload, 'utf8').digest('hex')
}

/**
 * Everything that is wrong with a chain: bytes that were altered, links that were swapped, left out or added,
 * and a tail that was cut off. Empty when it holds.
 * @param seals in the order of their numbers
 */
export function chainFaults(seals: readonly StoredSeal[], end: ChainEnd): ChainFault[] {
  const faults: ChainFault[] = []
  let previous = ''
  seals.forEach((seal, index) => {
    const blame = (sentence: string) => faults.push({ number: seal.number, sentence })
    if (seal.number !== index + 1) blame(`seal ${index + 1} is missing or out of order`)
    if (seal.previous !== previous) blame('it does not follow from the seal before it')
    if (sealHash(seal.previous, seal.payload) !== seal.hash) blame('its bytes are not those that were sealed')
    previous = seal.hash
  })
  if (seals.length !== end.count) {
    faults.push({
      number: seals.length + 1, sentence: `the job counts ${end.count} seals, ${seals.length} are there`,
    })
  }
  if (previous !== end.head) {
    faults.push({
      number: Math.max(seals.length, 1),
      sentence: 'the last seal is not the one that the job names as its head',
    })
  }
  return faults
}
