import type { FastifyRequest } from 'fastify'

/** As long as browsers keep one: when what it names ends is for the server to say. */
const COOKIE_DAYS = 400

/** How a secret lies in a browser: no script reads it, no other site's page sends it along. */
export function secretCookie(request: FastifyRequest) {
  return { path: '/', httpOnly: true, sameSite: 'lax', secure: isSecure(request), maxAge: COOKIE_DAYS * 24 * 60 * 60 } as const
}

/** Over the wire the cookie is Secure; on loopback, and where the owner named a plain http address, it cannot be. */
function isSecure(request: FastifyRequest): boolean {
  const { origin, hasCertificate } = request.server.shop
  if (origin !== undefined) return origin.startsWith('https:')
  if (hasCertificate) return true
  return !['127.0.0.1', 'localhost', '[::1]'].includes(request.hostname)
}
