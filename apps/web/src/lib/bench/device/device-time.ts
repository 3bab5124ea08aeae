import { serverClockAhead } from '../../api/reach.ts'

/** The service's time now as far as the device knows it: what the service holds against its own clock is asked by it. */
export function serviceTime(): number {
  return Date.now() + (serverClockAhead() ?? 0)
}

/** The device's own time now. It is kept beside the server's and orders nothing. */
export function deviceTime(): string {
  return new Date().toISOString()
}
