import type { Role } from '@tenths/contract'
import { Lucia, TimeSpan } from 'lucia'
import type { Pool } from 'pg'
import { sessionRows } from './session-rows.ts'

/** Whoever calls, with the roles that the database gives them at this request. */
export interface SignedIn {
  readonly id: string
  readonly name: string
  readonly roles: readonly Role[]
  /** The bench device the session belongs to; null for a browser. */
  readonly deviceId: string | null
}

export interface Sessions {
  /** Starts a session, on a bench device or in a browser, and answers its secret id, which only the cookie holds. */
  start(personId: string, deviceId: string | null): Promise<string>
  /** Who a session belongs to; null when it is unknown or lapsed, or the person left. */
  read(id: string): Promise<SignedIn | null>
  end(id: string): Promise<void>
}

/** Days without use after which a session lapses; using it in the second half prolongs it. */
const SESSION_DAYS = 14

/**
 * Sessions of the shop's people. The `lucia` package lives behind these three verbs and nowhere else, so that it can be
 * replaced in this folder alone.
 */
export function openSessions(pool: Pool): Sessions {
  const lucia = new Lucia(sessionRows(pool), {
    sessionExpiresIn: new TimeSpan(SESSION_DAYS, 'd'),
    getSessionAttributes: ({ deviceId }) => ({ deviceId }),
    getUserAttributes: ({ name, roles }) => ({ name, roles }),
  })
  return {
    async start(personId, deviceId) {
      await lucia.deleteExpiredSessions()
      return (await lucia.createSession(personId, { deviceId })).id
    },
    async read(id) {
      const { session, user } = await lucia.validateSession(id)
      return session === null ? null : { id: user.id, name: user.name, roles: user.roles, deviceId: session.deviceId }
    },
    end: (id) => lucia.invalidateSession(id),
  }
}

declare module 'lucia' {
  interface Register {
    Lucia: Lucia<{ deviceId: string | null }, { name: string; roles: Role[] }>
    DatabaseSessionAttributes: { deviceId: string | null }
    DatabaseUserAttributes: { name: string; roles: Role[] }
  }
}
