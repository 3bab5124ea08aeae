import { addEngineModel, listEngineModels, type EngineModel } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import type { z } from 'zod'
import { command } from '../commands/command.ts'
import { register } from '../http/register.ts'
import { insertEngineModel } from './insert-engine-model.ts'

type WireModel = z.infer<typeof EngineModel>

/** The shop's library of engines and the parts they usually get. */
export function engineRoutes(app: FastifyInstance): void {
  register(app, listEngineModels, async ({ shop }) => {
    const models = await shop.prisma.engineModel.findMany({
      select: { id: true, name: true, specification: true, parts: true }, orderBy: { name: 'asc' },
    })
    return { models: models as unknown as WireModel[] }
  })

  command(app, addEngineModel, async ({ client }, { body }) => {
    await insertEngineModel(client, body)
    return body
  })
}
