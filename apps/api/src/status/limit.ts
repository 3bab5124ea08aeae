import type {} from '@fastify/rate-limit'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { ServiceError } from '../http/problem.ts'

/** Looks at status pages a minute from one address. A link's 128 bits are not guessed; this only keeps a flood out. */
const PER_ADDRESS = 120

/** A hook for the status page. @throws ServiceError `too-many-tries` */
export function limitStatus(app: FastifyInstance): (request: FastifyRequest) => Promise<void> {
  const limiter = app.createRateLimit({ max: PER_ADDRESS, timeWindow: '1 minute', keyGenerator: (request) => request.ip })
  return async (request) => {
    const limit = await limiter(request)
    if (!limit.isAllowed && limit.isExceeded) {
      throw new ServiceError('too-many-tries', 'Too many looks. Wait a minute and try again.', undefined, limit.ttlInSeconds)
    }
  }
}

/** The server's own pages ask over loopback on behalf of everybody: their callers are counted at the page. */
export function isLoopback(address: string): boolean {
  return address === '127.0.0.1' || address === '::1' || address === '::ffff:127.0.0.1'
}
