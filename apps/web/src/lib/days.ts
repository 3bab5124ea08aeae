import { serverTime } from './api/reach.ts'

/** Days and instants as people of the shop say them. */

const day = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' })

/** `2026-03-06` as *Fri 6 Mar 2026*: a day of the calendar, the same in every zone. */
export function sayDay(iso: string): string {
  return day.format(new Date(`${iso}T00:00:00Z`)).replace(',', '')
}

/**
 * What is to be said of a promised day on which nobody works: forecasts count eight hours a day, Monday to Friday
 * (`apps/api/src/desk/risk.ts`). A day may still be promised for it. Nothing of a working day, or of what is no day.
 * @param iso `YYYY-MM-DD`
 */
export function sayDayOff(iso: string): string | undefined {
  const noon = new Date(`${iso}T12:00:00Z`)
  if (Number.isNaN(noon.getTime())) return undefined
  const weekday = noon.getUTCDay()
  if (weekday !== 0 && weekday !== 6) return undefined
  return `A ${weekday === 0 ? 'Sunday' : 'Saturday'}: forecasts count on work from Monday to Friday only.`
}

/** An instant in the shop's zone, such as *Fri 6 Mar, 14:05*. */
export function sayInstant(instant: string, timeZone: string): string {
  return instants(timeZone).format(new Date(instant))
}

const instants = perZone('en-GB', { weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })
const days = perZone('en-CA', { year: 'numeric', month: '2-digit', day: '2-digit' })

/** A format for each zone, made once: making one takes a bench’s tablet milliseconds, at every key. */
function perZone(locale: string, parts: Intl.DateTimeFormatOptions): (timeZone: string) => Intl.DateTimeFormat {
  const made = new Map<string, Intl.DateTimeFormat>()
  return (timeZone) => {
    const known = made.get(timeZone) ?? new Intl.DateTimeFormat(locale, { ...parts, timeZone })
    made.set(timeZone, known)
    return known
  }
}

/** The day of a zone as it was last asked for: each key at a bench asks, and the day changes at a whole minute. */
let known = { timeZone: '', minute: NaN, day: '' }

function today(timeZone: string): string {
  const now = serverTime()
  const minute = Math.floor(now / 60_000)
  if (known.timeZone !== timeZone || known.minute !== minute) known = { timeZone, minute, day: days(timeZone).format(now) }
  return known.day
}

/** Today in the shop's zone as `YYYY-MM-DD`, some days on; by the server's clock, whatever the device's says. */
export function shopDay(timeZone: string, daysOn = 0): string {
  if (daysOn === 0) return today(timeZone)
  const later = new Date(`${today(timeZone)}T00:00:00Z`)
  later.setUTCDate(later.getUTCDate() + daysOn)
  return later.toISOString().slice(0, 10)
}

/** Whole minutes as *2 h 05 min*, *45 min*. */
export function sayMinutes(minutes: number): string {
  const hours = Math.floor(minutes / 60)
  const rest = minutes % 60
  if (hours === 0) return `${rest} min`
  return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')} min`
}
