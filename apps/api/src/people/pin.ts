import { hash, verify } from '@node-rs/argon2'
import type { Pool } from 'pg'
import { ServiceError } from '../http/problem.ts'

/** Wrong tries after which a PIN is refused unread, and for how long. */
const MOST_TRIES = 5
export const LOCK_MINUTES = 15

const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 }

/**
 * The verifier of a six-digit PIN. A million PINs fall to any hash in time: the pepper, which lies in the data folder
 * and never in the database, makes a stolen table useless.
 */
export function hashPin(pin: string, pepper: string): Promise<string> {
  return hash(pin, { ...cost, secret: Buffer.from(pepper, 'hex') })
}

export interface PinTry {
  readonly personId: string
  readonly pin: string
  /** The bench device; null for a browser. All browsers of one person share one count. */
  readonly device: string | null
  readonly pepper: string
  readonly now: Date
  /** Field to blame, such as `signatures.0.pin`. */
  readonly field?: string
}

/**
 * Checks a PIN. A try is counted before the PIN is looked at, on a connection of its own, so that many tries at once
 * get no more than five guesses; the right PIN clears the count.
 * @throws ServiceError `pin-missing` when the person has none, `pin-wrong`, or `pin-locked` after five wrong ones.
 */
export async function verifyPin(pool: Pool, { personId, pin, device, pepper, now, field = 'pin' }: PinTry): Promise<void> {
  const { rows } = await pool.query<{ pin_hash: string | null }>(
    'SELECT pin_hash FROM person WHERE id = $1 AND active', [personId],
  )
  const person = rows[0]
  if (person === undefined) throw new ServiceError('pin-wrong', 'That PIN is not right.', field)
  if (person.pin_hash === null) throw new ServiceError('pin-missing', 'Choose a PIN first, on your own page.', field)

  const { failures, lockedUntil } = await countTry(pool, personId, device ?? 'browser', now)
  if (failures > MOST_TRIES) throw locked(lockedUntil, now, field)
  if (!(await verify(person.pin_hash, pin, { secret: Buffer.from(pepper, 'hex') }))) {
    if (failures === MOST_TRIES) {
      // The owner's screen looks again. Nothing announces it: the stream finds it within a second by itself.
      await pool.query(`INSERT INTO event (kind, person_id) VALUES ('pin-locked', $1)`, [personId])
      throw locked(lockedUntil, now, field)
    }
    throw new ServiceError('pin-wrong', `That PIN is not right. ${triesLeft(MOST_TRIES - failures)}`, field)
  }
  await pool.query('DELETE FROM pin_lock WHERE person_id = $1 AND device = $2', [personId, device ?? 'browser'])
}

/** Counts one try; the fifth starts the lock, and a try after the lock starts a new count. */
async function countTry(
  pool: Pool, personId: string, device: string, now: Date,
): Promise<{ failures: number; lockedUntil: Date | null }> {
  const { rows } = await pool.query<{ failures: number; lockedUntil: Date | null }>(
    `INSERT INTO pin_lock AS kept (person_id, device, failures) VALUES ($1, $2, 1)
     ON CONFLICT (person_id, device) DO UPDATE SET
       failures = CASE WHEN kept.locked_until <= $3 THEN 1 ELSE kept.failures + 1 END,
       locked_until = CASE
         WHEN kept.locked_until <= $3 THEN NULL
         WHEN kept.failures + 1 = $4 THEN $3::timestamptz + make_interval(mins => $5)
         ELSE kept.locked_until
       END
     RETURNING failures, locked_until AS "lockedUntil"`,
    [personId, device, now, MOST_TRIES, LOCK_MINUTES],
  )
  const row = rows[0]
  if (row === undefined) throw new Error('A counted try answers its count.')
  return row
}

function locked(until: Date | null, now: Date, field: string): ServiceError {
  const seconds = until === null ? LOCK_MINUTES * 60 : Math.max(1, Math.ceil((until.getTime() - now.getTime()) / 1000))
  const minutes = Math.ceil(seconds / 60)
  return new ServiceError(
    'pin-locked', `Too many wrong PINs. Try again in ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}.`, field, seconds,
  )
}

function triesLeft(count: number): string {
  return count === 1 ? 'One more try.' : `${count} more tries.`
}
