import type { WorkingHours } from './schedule-types.ts'

/** A time that the working hours given do not reach. */
export const NEVER = Number.POSITIVE_INFINITY

/**
 * The open hours of all benches, and how far each has come in them: a bench's time only moves forward.
 *
 * Shifts stand in one pair of arrays, hours that several benches keep only once. After the last shift of each hours stands one
 * that never opens, so that nothing need ask for the end.
 */
export class BenchHours {
  private readonly opens: Float64Array
  private readonly closes: Float64Array
  private readonly firstShift: Int32Array
  private readonly shift: Int32Array

  /** @param hours of each bench */
  constructor(hours: readonly WorkingHours[]) {
    const firstOf = new Map<WorkingHours, number>()
    const shifts: (readonly [from: number, to: number])[] = []
    for (const own of new Set(hours)) {
      firstOf.set(own, shifts.length)
      for (const shift of own.intervals) shifts.push(shift)
      shifts.push([NEVER, NEVER])
    }
    this.opens = Float64Array.from(shifts, ([from]) => from)
    this.closes = Float64Array.from(shifts, ([, to]) => to)
    this.firstShift = Int32Array.from(hours, (own) => firstOf.get(own)!)
    this.shift = this.firstShift.slice()
  }

  reset(): void {
    this.shift.set(this.firstShift)
  }

  /** When a bench can start what is there from `now` on; NEVER when its hours have run out. */
  startFrom(bench: number, now: number): number {
    const { opens, closes } = this
    let shift = this.shift[bench]!
    while (closes[shift]! <= now) shift += 1
    this.shift[bench] = shift
    return Math.max(now, opens[shift]!)
  }

  /** When `minutes` of a bench's open hours are over, from a `start` that `startFrom` gave; NEVER when its hours run out before. */
  finishOf(bench: number, start: number, minutes: number): number {
    const { opens, closes } = this
    let shift = this.shift[bench]!
    let time = start
    let left = minutes
    while (left > closes[shift]! - time) {
      left -= closes[shift]! - time
      shift += 1
      time = opens[shift]!
    }
    this.shift[bench] = shift
    return Math.ceil(time + left)
  }
}
