/** The benches of each kind that are free: a stack for each kind, one after another in one array. */
export class FreeBenches {
  private readonly benches: Int32Array
  /** Where each kind's stack begins, and where it ends now. */
  private readonly first: Int32Array
  private readonly end: Int32Array
  private readonly benchesOfKind: readonly (readonly number[])[]

  /** @param benchesOfKind all benches by kind */
  constructor(benchesOfKind: readonly (readonly number[])[]) {
    this.benchesOfKind = benchesOfKind
    this.benches = new Int32Array(benchesOfKind.reduce((sum, { length }) => sum + length, 0))
    this.first = new Int32Array(benchesOfKind.length)
    this.end = new Int32Array(benchesOfKind.length)
    let first = 0
    for (const [kind, { length }] of benchesOfKind.entries()) {
      this.first[kind] = first
      first += length
    }
  }

  /** Frees all; the first of each kind is taken first. */
  reset(): void {
    this.end.set(this.first)
    for (const [kind, benches] of this.benchesOfKind.entries()) {
      for (let at = benches.length - 1; at >= 0; at -= 1) this.add(kind, benches[at]!)
    }
  }

  has(kind: number): boolean {
    return this.end[kind]! > this.first[kind]!
  }

  add(kind: number, bench: number): void {
    const end = this.end[kind]!
    this.benches[end] = bench
    this.end[kind] = end + 1
  }

  /** Takes the one that was added last; call only while the kind has one. */
  take(kind: number): number {
    const end = this.end[kind]! - 1
    this.end[kind] = end
    return this.benches[end]!
  }
}
