import { z } from 'zod'
import { Id, Line } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { EngineSpecification, PartsSpecification } from './engine-shapes.ts'

export const EngineModel = z.object({
  id: Id,
  name: z.string(),
  specification: EngineSpecification,
  parts: PartsSpecification,
})

export const listEngineModels = route({
  method: 'GET',
  path: '/api/engine-models',
  summary: 'The shop’s library of engines',
  who: everyone,
  answer: z.object({ models: z.array(EngineModel) }),
})

export const addEngineModel = route({
  method: 'POST',
  path: '/api/engine-models',
  summary: 'Add an engine to the library; one that cannot exist is refused',
  who: ['counter', 'owner'],
  status: 201,
  body: z.object({ id: Id, name: Line(120), specification: EngineSpecification, parts: PartsSpecification }),
  answer: EngineModel,
  problems: ['engine-impossible', 'layout-impossible', 'already-exists'],
})
