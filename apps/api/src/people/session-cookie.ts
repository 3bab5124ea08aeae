import type {} from '@fastify/cookie'
import type { FastifyReply, FastifyRequest } from 'fastify'
import type { SignedIn } from './sessions.ts'

const COOKIE = 'tenths_session'
/** As long as browsers keep one: when a session ends is for the server to say, which prolongs it while it is used. */
const COOKIE_DAYS = 400

/** Who calls by the session cookie; null when there is none or it does not count any more. */
export async function readPerson(request: FastifyRequest): Promise<SignedIn | null> {
  const id = request.cookies[COOKIE]
  return id === undefined ? null : request.server.shop.sessions.read(id)
}

/** Starts a session for a person; the one the browser came with ends, so that nobody can plant a known one. */
export async function startSession(request: FastifyRequest, reply: FastifyReply, personId: string): Promise<void> {
  await endSession(request, reply)
  void reply.setCookie(COOKIE, await request.server.shop.sessions.start(personId), {
    path: '/', httpOnly: true, sameSite: 'lax', secure: isSecure(request), maxAge: COOKIE_DAYS * 24 * 60 * 60,
  })
}

/** Ends the session that the cookie names, if any, and takes the cookie back. */
export async function endSession(request: FastifyRequest, reply: FastifyReply): Promise<void> {
  const id = request.cookies[COOKIE]
  if (id === undefined) return
  await request.server.shop.sessions.end(id)
  void reply.clearCookie(COOKIE, { path: '/' })
}

/** Over the wire the cookie is Secure; on loopback, and where the owner named a plain http address, it cannot be. */
function isSecure(request: FastifyRequest): boolean {
  const { origin, hasCertificate } = request.server.shop
  if (origin !== undefined) return origin.startsWith('https:')
  if (hasCertificate) return true
  return !['127.0.0.1', 'localhost', '[::1]'].includes(request.hostname)
}
