/** Postgres refused for want of time or room: a lock, a statement or a deadlock, too many connections, a restart. */
const busyStates = new Set(['55P03', '57014', '40P01', '40001', '53300', '57P01', '57P02', '57P03', '25P03', '08006', '08001'])
const lostConnection = new Set(['ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ETIMEDOUT', 'P1001', 'P1002', 'P1008', 'P1017', 'P2024'])

/** Whether the database could not be reached or did not answer in time, so that trying again may help. */
export function isBusy(error: unknown): boolean {
  if (!(error instanceof Error)) return false
  const code: unknown = (error as { code?: unknown }).code
  if (typeof code === 'string' && (busyStates.has(code) || lostConnection.has(code))) return true
  // `pg` gives these no code of their own.
  return /timeout exceeded when trying to connect|Connection terminated|Query read timeout/.test(error.message)
}
