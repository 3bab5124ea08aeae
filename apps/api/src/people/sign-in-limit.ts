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
export function limitSignIns(app: FastifyInstance): Hook {
  return refuseAbove([
    app.createRateLimit({ max: PER_ADDRESS, timeWindow: '1 minute', keyGenerator: (request) => request.ip }),
    app.createRateLimit({ max: PER_NAME, timeWindow: '1 minute', keyGenerator: addressAndName }),
  ])
}

/** A hook that bounds guessing of devices’ one-time codes, which name nobody. @throws ServiceError `too-many-tries` */
export function limitEnrolments(app: FastifyInstance): Hook {
  return refuseAbove([app.createRateLimit({ max: PER_ADDRESS, timeWindow: '1 minute', keyGenerator: (request) => request.ip })])
}

type Hook = (request: FastifyRequest) => Promise<void>

function refuseAbove(limits: readonly ReturnType<FastifyInstance['createRateLimit']>[]): Hook {
  return async (request) => {
    for (const check of limits) {
      const limit = await check(request)
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
