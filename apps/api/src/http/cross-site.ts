import type { FastifyRequest } from 'fastify'
import { ServiceError } from './problem.ts'

/**
 * Refuses what another site's page sends with this site's cookie. A browser says where a request comes from; whoever
 * is no browser carries no cookie of somebody else.
 * @throws ServiceError `not-allowed`
 */
export function refuseOtherSites(request: FastifyRequest, ownOrigin: string | undefined): void {
  if (request.method === 'GET' || request.method === 'HEAD') return
  const site = request.headers['sec-fetch-site']
  const from = request.headers.origin
  const isOther = site === 'cross-site' || (from !== undefined && hostOf(from) !== hostOf(ownOrigin) && hostOf(from) !== request.host)
  if (isOther) throw new ServiceError('not-allowed', 'This request came from another site’s page.')
}

/** Host and port of an origin; null for the opaque origin `null` and for what cannot be read. */
function hostOf(origin: string | undefined): string | null | undefined {
  if (origin === undefined) return undefined
  return URL.canParse(origin) ? new URL(origin).host : null
}
