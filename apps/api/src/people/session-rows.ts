import type { Role } from '@tenths/contract'
import type { Adapter, DatabaseSession } from 'lucia'
import { createHash } from 'node:crypto'
import type { Pool } from 'pg'

interface Row {
  person_id: string
  device_id: string | null
  expires_at: Date
  name: string
  roles: Role[]
}

/** A session's id has 200 random bits: one round of SHA-256 hides it for good, where a password would need argon2. */
function hashOf(sessionId: string): string {
  return createHash('sha256').update(sessionId).digest('hex')
}

/** Hours for which a bench device is in a person's hands. */
const SHIFT_HOURS = 12

/** Sessions in the table `session`, which holds a hash of each id: a stolen table opens nothing. */
export function sessionRows(pool: Pool): Adapter {
  return {
    async getSessionAndUser(sessionId) {
      const { rows } = await pool.query<Row>(
        `SELECT session.person_id, session.device_id, session.expires_at, person.name,
                ARRAY(SELECT role FROM person_role WHERE person_role.person_id = person.id ORDER BY role) AS roles
         FROM session
         JOIN person ON person.id = session.person_id AND person.active
         LEFT JOIN device ON device.id = session.device_id
         WHERE session.id_hash = $1 AND device.revoked_at IS NULL
           AND (session.device_id IS NULL OR session.expires_at > now())`,
        [hashOf(sessionId)],
      )
      const row = rows[0]
      if (row === undefined) return [null, null]
      return [sessionOf(sessionId, endingLate(row)), { id: row.person_id, attributes: { name: row.name, roles: row.roles } }]
    },
    /** Ids cannot be had back from their hashes: the hashes stand for them. */
    async getUserSessions(personId) {
      const { rows } = await pool.query<Row & { id_hash: string }>(
        'SELECT id_hash, person_id, device_id, expires_at FROM session WHERE person_id = $1', [personId],
      )
      return rows.map((row) => sessionOf(row.id_hash, row))
    },
    async setSession(session) {
      await pool.query(
        `INSERT INTO session (id_hash, person_id, device_id, expires_at)
         VALUES ($1, $2, $3, CASE WHEN $3::uuid IS NULL THEN $4 ELSE now() + make_interval(hours => $5) END)`,
        [hashOf(session.id), session.userId, session.attributes.deviceId, session.expiresAt, SHIFT_HOURS],
      )
    },
    async updateSessionExpiration(sessionId, expiresAt) {
      await pool.query('UPDATE session SET expires_at = $2 WHERE id_hash = $1', [hashOf(sessionId), expiresAt])
    },
    async deleteSession(sessionId) {
      await pool.query('DELETE FROM session WHERE id_hash = $1', [hashOf(sessionId)])
    },
    async deleteUserSessions(personId) {
      await pool.query('DELETE FROM session WHERE person_id = $1', [personId])
    },
    async deleteExpiredSessions() {
      await pool.query('DELETE FROM session WHERE expires_at <= now()')
    },
  }
}

/**
 * lucia prolongs a session that is past half of its time. A shift is never prolonged: its end is held by the statement that
 * reads it, and lucia is told of one that is far away.
 */
function endingLate(row: Row): Row {
  return row.device_id === null ? row : { ...row, expires_at: new Date('9999-12-31T00:00:00Z') }
}

function sessionOf(id: string, row: Pick<Row, 'person_id' | 'device_id' | 'expires_at'>): DatabaseSession {
  return { id, userId: row.person_id, expiresAt: row.expires_at, attributes: { deviceId: row.device_id } }
}
