import type { FastifyReply, FastifyRequest } from 'fastify'

const ofEveryAnswer = {
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), microphone=(), geolocation=(), payment=()',
} as const

/**
 * Headers that narrow what a page of ours may do. They are set on the raw answer, because the pages' handler writes
 * past Fastify. Pages bring their own Content-Security-Policy; data never needs one that allows anything.
 */
export function setSecurityHeaders(request: FastifyRequest, reply: FastifyReply, overTls: boolean): void {
  for (const [name, value] of Object.entries(ofEveryAnswer)) reply.raw.setHeader(name, value)
  if (overTls) reply.raw.setHeader('strict-transport-security', 'max-age=31536000')
  if (isCustomersPage(request.url)) {
    reply.raw.setHeader('referrer-policy', 'no-referrer')
    reply.raw.setHeader('x-robots-tag', 'noindex, nofollow')
    reply.raw.setHeader('cache-control', 'no-store')
  }
  if (request.url.startsWith('/api/')) {
    reply.raw.setHeader('cache-control', 'no-store')
    reply.raw.setHeader('content-security-policy', "default-src 'none'; frame-ancestors 'none'")
  }
}

/** The status page and its data: never kept by anybody on the way, never indexed, never told to the next site. */
function isCustomersPage(url: string): boolean {
  return url.startsWith('/s/') || url.startsWith('/api/status/')
}
