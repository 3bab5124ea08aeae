/** How many numbers one word of the topmost level speaks for: 32 words of 32 words of 32 bits. */
const BLOCK = 32 ** 3

/**
 * Several sets of whole numbers from 0 up to one capacity, each least first: a bit for each number, above each 32 bits one
 * that says whether any of them is set, and above each 32 of those one more. Work that waits lies in these without allocation;
 * adding and taking cost three steps, and one more for each 32,768 numbers of capacity that hold none.
 */
export class NumberSets {
  /** The sets' bits one set after another, each in as many whole blocks as its capacity needs; then both summaries. */
  private readonly bits: Int32Array
  private readonly anyOf32: Int32Array
  private readonly anyOf1024: Int32Array
  private readonly blocks: number
  private readonly sizes: Int32Array

  constructor(sets: number, capacity: number) {
    this.blocks = Math.max(1, Math.ceil(capacity / BLOCK))
    this.anyOf1024 = new Int32Array(sets * this.blocks)
    this.anyOf32 = new Int32Array(this.anyOf1024.length * 32)
    this.bits = new Int32Array(this.anyOf32.length * 32)
    this.sizes = new Int32Array(sets)
  }

  size(set: number): number {
    return this.sizes[set]!
  }

  /** Puts in a number that is not in the set. */
  add(set: number, number: number): void {
    const { bits, anyOf32, anyOf1024 } = this
    this.sizes[set]! += 1
    const at = set * this.blocks * BLOCK + number
    bits[at >>> 5]! |= 1 << (at & 31)
    anyOf32[at >>> 10]! |= 1 << ((at >>> 5) & 31)
    anyOf1024[at >>> 15]! |= 1 << ((at >>> 10) & 31)
  }

  /** Takes the least number out; call only while the set's size is above 0. */
  takeLeast(set: number): number {
    const { bits, anyOf32, anyOf1024 } = this
    this.sizes[set]! -= 1
    const first = set * this.blocks
    let block = first
    while (anyOf1024[block] === 0) block += 1
    const thousand = (block << 5) + lowestBit(anyOf1024[block]!)
    const word = (thousand << 5) + lowestBit(anyOf32[thousand]!)
    const at = (word << 5) + lowestBit(bits[word]!)
    bits[word] = withoutLowestBit(bits[word]!)
    if (bits[word] === 0) {
      anyOf32[thousand] = withoutLowestBit(anyOf32[thousand]!)
      if (anyOf32[thousand] === 0) anyOf1024[block] = withoutLowestBit(anyOf1024[block]!)
    }
    return at - first * BLOCK
  }

  clear(): void {
    this.sizes.fill(0)
    this.bits.fill(0)
    this.anyOf32.fill(0)
    this.anyOf1024.fill(0)
  }
}

function lowestBit(word: number): number {
  return 31 - Math.clz32(word & -word)
}

function withoutLowestBit(word: number): number {
  return word & (word - 1)
}
