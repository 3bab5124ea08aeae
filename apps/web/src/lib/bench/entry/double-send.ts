import { doubtOfDoubleSend, starterPlausibilityNumbers, type Doubt } from '@tenths/domain'

/** A value that was just entered, and when by the device's clock, in milliseconds. */
export interface JustEntered {
  readonly value: number
  readonly at: number
}

/**
 * The doubt about a value that came twice at once: a gauge that sends its figure twice fills two cells with one reading.
 * The second one stays in its cell until it is confirmed.
 */
export function doubleSend(last: JustEntered | null, now: JustEntered): Doubt | null {
  return last && doubtOfDoubleSend(last.value, now.value, now.at - last.at, starterPlausibilityNumbers)
}
