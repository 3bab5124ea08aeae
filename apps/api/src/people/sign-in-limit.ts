import type {} from '@fastify/rate-limit'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { ServiceError } from '../http/problem.ts'

/** Tries a minute from one address with one name, and from one address with any: a shop's tablets share an address. */
const PER_NAME = 10
const PER_ADDRESS = 60

/**
 * A hook that bounds guessing of passwords and of the set-up link. Counts are kept per process.
 * @throws ServiceError `too-many-tries`
 */
export function limitSignIns(app: FastifyInstance): (request: FastifyRequest) => Promise<void> {
  const byName = app.createRateLimit({ max: PER_NAME, timeWindow: '1 minute', keyGenerator: addressAndName })
  const byAddress = app.createRateLimit({ max: PER_ADDRESS, timeWindow: '1 minute', keyGenerator: (request) => request.ip })
  return async (request) => {
    for (const limit of [await byAddress(request), await byName(request)]) {
      if (!limit.isAllowed && limit.isExceeded) {
        throw new ServiceError('too-many-tries', 'Too many tries. Wait a minute and try again.', undefined, limit.ttlInSeconds)
      }
    }
  }
}

function addressAndName(request: FastifyRequest): string {
  const body: unknown = request.body
  const name: unknown = typeof body === 'object' && body !== null && 'signInName' in body ? body.signInName : ''
  return `${request.ip} ${String(name).toLowerCase().slice(0, 80)}`
}
