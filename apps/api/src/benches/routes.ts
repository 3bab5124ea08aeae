import { addBench, listBenches, readQueue } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { ServiceError } from '../http/problem.ts'
import { register } from '../http/register.ts'
import { readToday } from '../jobs/today.ts'
import * as read from './read-benches.ts'

/** Benches and what waits at them. */
export function benchRoutes(app: FastifyInstance): void {
  const { pool } = app.shop

  register(app, listBenches, async () => ({ benches: await read.listBenches(pool) }))

  register(app, readQueue, async ({ shop }, { params }) =>
    read.readQueue(pool, params.id, await readToday(pool, shop.now())))

  command(app, addBench, async ({ client }, { body }) => {
    const { rowCount } = await client.query(
      'INSERT INTO bench (id, name, kind) VALUES ($1, $2, $3) ON CONFLICT DO NOTHING', [body.id, body.name, body.kind],
    )
    if (rowCount === 0) throw new ServiceError('already-exists', `There is a bench called ${body.name} already.`, 'name')
    const [bench] = await read.listBenches(client, body.id)
    if (bench === undefined) throw new Error('A bench just added is there.')
    return bench
  })
}
