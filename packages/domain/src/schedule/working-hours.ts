import { DomainError } from '../errors.ts'
import type { ShopMinute, WorkingHours } from './schedule-types.ts'

export const MINUTES_PER_DAY = 1_440

/** A week's pattern: for each weekday, Monday first, the shifts in minutes after midnight. */
export type WeeklyPattern = readonly (readonly (readonly [from: number, to: number])[])[]

/**
 * Working hours of `days` days from shop minute 0 (a Monday), by a weekly pattern, without the days in `closed`
 * (numbers of days since minute 0).
 * @throws DomainError `value-out-of-range` on a pattern that is not seven days of ascending shifts within the day
 */
export function workingHours(pattern: WeeklyPattern, days: number, closed: ReadonlySet<number> = new Set()): WorkingHours {
  checkPattern(pattern)
  const intervals: [ShopMinute, ShopMinute][] = []
  for (let day = 0; day < days; day += 1) {
    if (closed.has(day)) continue
    for (const [from, to] of pattern[day % 7] ?? []) {
      intervals.push([day * MINUTES_PER_DAY + from, day * MINUTES_PER_DAY + to])
    }
  }
  return { intervals }
}

function checkPattern(pattern: WeeklyPattern): void {
  if (pattern.length !== 7) throw new DomainError('value-out-of-range', 'A week has seven days.', 'pattern')
  for (const shifts of pattern) {
    let before = -1
    for (const [from, to] of shifts) {
      if (from <= before || to <= from || to > MINUTES_PER_DAY) {
        throw new DomainError('value-out-of-range', `A shift from minute ${from} to ${to} does not fit its day.`, 'pattern')
      }
      before = to
    }
  }
}

/** Minutes worked between two shop minutes: how much room is left before a promise. */
export function minutesBetween(hours: WorkingHours, from: ShopMinute, to: ShopMinute): number {
  let sum = 0
  for (const [opens, closes] of hours.intervals) {
    if (opens >= to) break
    sum += Math.max(0, Math.min(closes, to) - Math.max(opens, from))
  }
  return sum
}
