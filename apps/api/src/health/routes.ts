import { readHealth } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { readMigrations } from '../database/migrations.ts'
import { schemaIsCurrent } from '../database/schema-state.ts'
import { ServiceError } from '../http/problem.ts'
import { register } from '../http/register.ts'
import about from '../../package.json' with { type: 'json' }

/** Whether this process can serve: 200 with the newest migration's name, or 503 when a load balancer should wait. */
export async function healthRoutes(app: FastifyInstance): Promise<void> {
  const migrations = (await readMigrations()).map(({ name }) => name)
  register(app, readHealth, async ({ shop }) => {
    const current = await schemaIsCurrent(shop.pool, migrations).catch(() => {
      throw new ServiceError('busy', 'The database cannot be reached.', undefined, 5)
    })
    if (!current) throw new ServiceError('busy', 'The database is not yet at this version.', undefined, 5)
    return { status: 'ok' as const, version: about.version, schema: migrations.at(-1) ?? '' }
  })
}
