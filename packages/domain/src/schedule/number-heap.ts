/** A binary heap of numbers, least first, in one typed array: the schedule's queues live in these without allocation. */
export class NumberHeap {
  private readonly items: Float64Array
  size = 0

  constructor(capacity: number) {
    this.items = new Float64Array(capacity)
  }

  /** The least number; meaningless while `size` is 0. */
  get least(): number {
    return this.items[0]!
  }

  push(item: number): void {
    const items = this.items
    let hole = this.size
    this.size += 1
    while (hole > 0) {
      const parent = (hole - 1) >> 1
      const above = items[parent]!
      if (above <= item) break
      items[hole] = above
      hole = parent
    }
    items[hole] = item
  }

  /** Takes the least number out; call only while `size` is above 0. */
  pop(): number {
    const items = this.items
    const least = items[0]!
    this.size -= 1
    const size = this.size
    const last = items[size]!
    // The hole sinks to the bottom along the lesser children, then the last item rises from there: it belongs low, and a
    // choice without a branch costs less than asking at each level whether it may stay.
    items[size] = Number.POSITIVE_INFINITY
    let hole = 0
    for (let child = 1; child < size; child = 2 * hole + 1) {
      child += Number(items[child + 1]! < items[child]!)
      items[hole] = items[child]!
      hole = child
    }
    while (hole > 0) {
      const parent = (hole - 1) >> 1
      const above = items[parent]!
      if (above <= last) break
      items[hole] = above
      hole = parent
    }
    items[hole] = last
    return least
  }
}
