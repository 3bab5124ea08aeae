import type { EngineModel } from '@tenths/contract'
import { orientations, validateCombination, validateEngine } from '@tenths/domain'
import type { PoolClient } from 'pg'
import type { z } from 'zod'
import { ServiceError } from '../http/problem.ts'
import { engineOf, partsOf } from './wire-engine.ts'

/**
 * Adds an engine to the library.
 * @throws DomainError `engine-impossible` or `layout-impossible` for one that cannot exist; ServiceError
 *   `already-exists` when its name or id is taken.
 */
export async function insertEngineModel(client: PoolClient, model: z.infer<typeof EngineModel>): Promise<void> {
  const engine = engineOf(model.specification)
  validateEngine(engine)
  validateCombination(engine, partsOf(model.parts))
  orientations(engine)
  const { rowCount } = await client.query(
    'INSERT INTO engine_model (id, name, specification, parts) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING',
    [model.id, model.name, JSON.stringify(model.specification), JSON.stringify(model.parts)],
  )
  if (rowCount === 0) throw new ServiceError('already-exists', 'The library has an engine of this name already.', 'name')
}
