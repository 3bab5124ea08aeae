/**
 * What every call knows of the way to the server: whether the last answer came, whether the server still knew who asked,
 * and how far its clock is ahead.
 */

export interface Reach {
  /** Whether the service answered, whatever it said. */
  readonly reached?: boolean
  /** Whether the server knows who is here. */
  readonly signedIn?: boolean
}

const listeners = new Set<(found: Reach) => void>()
let isAway = false

/** Whether the last call got no answer of the service. */
export function foundAway(): boolean {
  return isAway
}

/** Tells whoever listens what a call has found. */
export function sayReach(found: Reach): void {
  if (found.reached !== undefined) isAway = !found.reached
  for (const listener of listeners) listener(found)
}

export function onReach(listener: (found: Reach) => void): void {
  listeners.add(listener)
}

const entry = 'server-clock-ahead'

/** Notes how far the server's clock is ahead, from the Date of an answer, which has whole seconds. */
export function noteServerClock(date: string | null, now = Date.now()): void {
  const server = date === null ? NaN : Date.parse(date)
  if (Number.isNaN(server) || typeof localStorage === 'undefined') return
  const ahead = server + 500 - now
  const known = serverClockAhead()
  // Within what whole seconds can tell, nothing new is learnt: a tablet is spared writing at every answer.
  if (known === null || Math.abs(ahead - known) > 500) localStorage.setItem(entry, String(ahead))
}

/** A clock that is farther off than three weeks tells nothing: the service takes no such figure. */
const farthest = 2_000_000_000

/** The server's time now as far as the device knows it: what the server holds against its own clock is asked by it. */
export function serverTime(): number {
  return Date.now() + (serverClockAhead() ?? 0)
}

/** Milliseconds by which the server's clock was ahead of the device's at their last contact; null before the first. */
export function serverClockAhead(): number | null {
  if (typeof localStorage === 'undefined') return null
  const kept = localStorage.getItem(entry)
  return kept === null || Math.abs(Number(kept)) > farthest ? null : Number(kept)
}
