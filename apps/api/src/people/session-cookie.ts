import type {} from '@fastify/cookie'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { readBenchDevice } from '../devices/device-cookie.ts'
import { secretCookie } from '../http/secure-cookie.ts'
import type { SignedIn } from './sessions.ts'

const COOKIE = 'tenths_session'

/** Who calls by the session cookie; null when there is none or it does not count any more. */
export async function readPerson(request: FastifyRequest): Promise<SignedIn | null> {
  const id = request.cookies[COOKIE]
  return id === undefined ? null : request.server.shop.sessions.read(id)
}

/**
 * Starts a session for a person; the one the browser came with ends, so that nobody can plant a known one. On a bench
 * device it belongs to the device and is good for a shift.
 */
export async function startSession(request: FastifyRequest, reply: FastifyReply, personId: string): Promise<void> {
  await endSession(request, reply)
  const device = await readBenchDevice(request)
  void reply.setCookie(COOKIE, await request.server.shop.sessions.start(personId, device?.id ?? null), secretCookie(request))
}

/** Ends the session that the cookie names, if any, and takes the cookie back. */
export async function endSession(request: FastifyRequest, reply: FastifyReply): Promise<void> {
  const id = request.cookies[COOKIE]
  if (id === undefined) return
  await request.server.shop.sessions.end(id)
  void reply.clearCookie(COOKIE, { path: '/' })
}
