/**
 * A set of whole numbers from 0 up to a capacity, least first: a bit for each number, and above each 32 bits one that says
 * whether any of them is set. Work that waits lies in these without allocation; adding and taking cost one step a level,
 * and 32 times the capacity one level more.
 */
export class NumberSet {
  /** Bits of the numbers first, then their summaries; the last level is one word. */
  private readonly levels: readonly Int32Array[]
  size = 0

  constructor(capacity: number) {
    const levels: Int32Array[] = []
    let words = capacity
    do {
      words = Math.max(1, Math.ceil(words / 32))
      levels.push(new Int32Array(words))
    } while (words > 1)
    this.levels = levels
  }

  /** Puts in a number that is not in the set. */
  add(number: number): void {
    this.size += 1
    let at = number
    for (let level = 0; level < this.levels.length; level += 1) {
      const words = this.levels[level]!
      const word = at >>> 5
      const before = words[word]!
      words[word] = before | (1 << (at & 31))
      if (before !== 0) return
      at = word
    }
  }

  /** Takes the least number out; call only while `size` is above 0. */
  takeLeast(): number {
    this.size -= 1
    let least = 0
    for (let level = this.levels.length - 1; level >= 0; level -= 1) {
      const bits = this.levels[level]![least]!
      least = (least << 5) + 31 - Math.clz32(bits & -bits)
    }
    let at = least
    for (let level = 0; level < this.levels.length; level += 1) {
      const words = this.levels[level]!
      const word = at >>> 5
      const left = words[word]! & ~(1 << (at & 31))
      words[word] = left
      if (left !== 0) break
      at = word
    }
    return least
  }

  clear(): void {
    if (this.size === 0) return
    this.size = 0
    for (const words of this.levels) words.fill(0)
  }
}
