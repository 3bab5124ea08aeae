import { Temporal } from 'temporal-polyfill'

/** Whether this names a zone of the IANA time zone database that this program knows. */
export function isTimeZone(name: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name)
    return true
  } catch {
    return false
  }
}

/** The calendar day, `YYYY-MM-DD`, that an instant falls on in a shop's time zone. */
export function dayIn(timeZone: string, instant: Date): string {
  return Temporal.Instant.fromEpochMilliseconds(instant.getTime()).toZonedDateTimeISO(timeZone).toPlainDate().toString()
}
