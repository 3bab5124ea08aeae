import { checkPlausibility, type Doubt, type ReaderUnit } from '@tenths/domain'

/** A value that was just entered, and when by the device's clock, in milliseconds. */
export interface JustEntered {
  readonly value: number
  readonly at: number
}

/**
 * The doubt about a value that came twice at once: a gauge that sends its figure twice fills two cells with one reading.
 * The second one stays in its cell until it is confirmed.
 */
export function doubleSend(last: JustEntered | null, now: JustEntered, unit: ReaderUnit): Doubt[] {
  if (last === null) return []
  const subject = { kind: 'double-send', first: last.value, second: now.value, milliseconds: now.at - last.at } as const
  return checkPlausibility(subject, unit)
}
