import { addGauge, listGauges, type Gauge } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import type { PoolClient } from 'pg'
import type { z } from 'zod'
import { command } from '../commands/command.ts'
import type { PrismaClient } from '../database/prisma.ts'
import { ServiceError } from '../http/problem.ts'
import { register } from '../http/register.ts'

type WireGauge = z.infer<typeof Gauge>

/** Gauges: what they resolve, how sure a reading of theirs is, until when they are calibrated. */
export function gaugeRoutes(app: FastifyInstance): void {
  register(app, listGauges, async ({ shop }) => ({ gauges: await list(shop.prisma) }))
  command(app, addGauge, async ({ client }, { body }) => {
    await insert(client, body)
    return body
  })
}

async function list(prisma: PrismaClient): Promise<WireGauge[]> {
  const gauges = await prisma.gauge.findMany({ orderBy: { mark: 'asc' } })
  return gauges.map((gauge) => ({
    ...gauge,
    quantity: gauge.quantity as WireGauge['quantity'],
    resolution: Number(gauge.resolution),
    calibratedUntil: gauge.calibratedUntil.toISOString().slice(0, 10),
  }))
}

/** @throws ServiceError `already-exists` when the mark or the id is taken. */
async function insert(client: PoolClient, gauge: WireGauge): Promise<void> {
  const { rowCount } = await client.query(
    `INSERT INTO gauge (id, mark, name, kind, quantity, resolution, analogue, clockwise_is_smaller, standard_uncertainty,
                        calibrated_until, retired)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11) ON CONFLICT DO NOTHING`,
    [
      gauge.id, gauge.mark, gauge.name, gauge.kind, gauge.quantity, gauge.resolution, gauge.analogue,
      gauge.clockwiseIsSmaller, gauge.standardUncertainty, gauge.calibratedUntil, gauge.retired,
    ],
  )
  if (rowCount === 0) throw new ServiceError('already-exists', `There is a gauge marked ${gauge.mark} already.`, 'mark')
}
