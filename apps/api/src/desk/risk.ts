import { Temporal } from 'temporal-polyfill'

/**
 * Hands-on minutes in a working day of one person: eight hours. A starter figure, common practice, no source.
 */
const WORKING_DAY_MINUTES = 480

/** Whether a promise is at risk, and what that was worked out from. */
export interface Risk {
  readonly isAtRisk: boolean
  readonly workingDaysLeft: number
  readonly reason: string
}

/**
 * Holds what is left to do against the days until a promise, as if one person worked on this job alone for
 * eight hours a day, Monday to Friday, today included. It does not see queues, waiting or outside work.
 * @param today and promisedOn calendar days, `YYYY-MM-DD`, in the shop's time zone
 */
export function riskOf(remainingMinutes: number, today: string, promisedOn: string): Risk {
  const days = workingDays(today, promisedOn)
  const basis = 'one person on it, 8 hours a day, Monday to Friday'
  if (promisedOn < today) {
    return { isAtRisk: true, workingDaysLeft: 0, reason: 'The promised day has passed.' }
  }
  const room = days * WORKING_DAY_MINUTES
  return {
    isAtRisk: remainingMinutes > room,
    workingDaysLeft: days,
    reason: `${room === 0 ? 'No working time' : `${room / 60} h`} left until the promised day (${basis}).`,
  }
}

/**
 * Mondays to Fridays from the first day to the last, both included; none when the last comes before the
 * first.
 */
export function workingDays(from: string, to: string): number {
  const first = Temporal.PlainDate.from(from)
  const days = first.until(Temporal.PlainDate.from(to)).days + 1
  if (days <= 0) return 0
  const rest = days % 7
  const inRest = Array.from(
    { length: rest }, (_, index) => (first.dayOfWeek - 1 + index) % 7,
  ).filter((day) => day < 5)
  return Math.floor(days / 7) * 5 + inRest.length
}

/** Whether a day lies in the same week, Monday to Sunday, as today. */
export function isThisWeek(today: string, day: string): boolean {
  const date = Temporal.PlainDate.from(today)
  const monday = date.subtract({ days: date.dayOfWeek - 1 })
  return day >= monday.toString() && day <= monday.add({ days: 6 }).toString()
}
