import type {} from '@fastify/cookie'
import type { FastifyReply, FastifyRequest } from 'fastify'
import type { SignedIn } from './sessions.ts'

const COOKIE = 'tenths_session'

/** Who calls by the session cookie; null when there is none or it does not count any more. */
export async function readPerson(request: FastifyRequest, reply: FastifyReply): Promise<SignedIn | null> {
  const id = request.cookies[COOKIE]
  if (id === undefined) return null
  const found = await request.server.shop.sessions.read(id)
  if (found === null) return null
  if (found.prolongedUntil !== null) setSessionCookie(request, reply, id, found.prolongedUntil)
  return found.person
}

/** Starts a session for a person; the one the browser came with ends, so that nobody can plant a known one. */
export async function startSession(request: FastifyRequest, reply: FastifyReply, personId: string): Promise<void> {
  await endSession(request, reply)
  const session = await request.server.shop.sessions.start(personId)
  setSessionCookie(request, reply, session.id, session.expiresAt)
}

/** Ends the session that the cookie names, if any, and takes the cookie back. */
export async function endSession(request: FastifyRequest, reply: FastifyReply): Promise<void> {
  const id = request.cookies[COOKIE]
  if (id === undefined) return
  await request.server.shop.sessions.end(id)
  void reply.clearCookie(COOKIE, { path: '/' })
}

function setSessionCookie(request: FastifyRequest, reply: FastifyReply, id: string, expires: Date): void {
  void reply.setCookie(COOKIE, id, {
    path: '/', httpOnly: true, sameSite: 'lax', secure: isSecure(request), expires,
  })
}

/** Over the wire the cookie is Secure; on loopback, and where the owner named a plain http address, it cannot be. */
function isSecure(request: FastifyRequest): boolean {
  const { origin, hasCertificate } = request.server.shop
  if (origin !== undefined) return origin.startsWith('https:')
  if (hasCertificate) return true
  return !['127.0.0.1', 'localhost', '[::1]'].includes(request.hostname)
}
