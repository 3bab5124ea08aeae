import type {} from '@fastify/cookie'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { ServiceError } from '../http/problem.ts'
import { secretCookie } from '../http/secure-cookie.ts'
import { hashOfSecret } from './secret.ts'

const COOKIE = 'tenths_device'

/** A shared tablet, as its own cookie proves it. */
export interface BenchDevice {
  readonly id: string
  readonly name: string
  readonly benchId: string
}

/** The bench device that calls; null for any other browser, and once the owner revoked it. */
export async function readBenchDevice(request: FastifyRequest): Promise<BenchDevice | null> {
  const secret = request.cookies[COOKIE]
  if (secret === undefined) return null
  const { rows } = await request.server.shop.pool.query<BenchDevice>(
    'SELECT id, name, bench_id AS "benchId" FROM device WHERE secret_hash = $1 AND revoked_at IS NULL', [hashOfSecret(secret)],
  )
  return rows[0] ?? null
}

/** @throws ServiceError `device-unknown` unless a bench device calls */
export async function requireBenchDevice(request: FastifyRequest): Promise<BenchDevice> {
  const device = await readBenchDevice(request)
  if (device === null) {
    throw new ServiceError('device-unknown', 'This browser is no bench device of the shop: the owner registers it at the desk.')
  }
  return device
}

/** Gives the tablet its secret, which outlives every session on it. */
export function setDeviceCookie(request: FastifyRequest, reply: FastifyReply, secret: string): void {
  void reply.setCookie(COOKIE, secret, secretCookie(request))
}
