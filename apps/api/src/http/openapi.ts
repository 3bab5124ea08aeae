import * as contract from '@tenths/contract'
import type { ErrorCode, RouteDefinition } from '@tenths/contract'
import { STATUS_CODES } from 'node:http'
import { z } from 'zod'
import { statusOfCode } from './status-of-code.ts'

type Json = Readonly<Record<string, unknown>>
type Names = z.core.$ZodRegistry<{ id: string }>

/** Problems that any route may answer, those of routes for people of the shop, and those of commands. */
const always: readonly ErrorCode[] = ['body-invalid', 'busy', 'unexpected']
const ofPeople: readonly ErrorCode[] = ['not-signed-in', 'not-allowed']
const ofCommands: readonly ErrorCode[] = ['key-missing', 'key-reused']

/** The service's interface as an OpenAPI 3.1 document, built from the contract alone. */
export function openapi(version: string): Json {
  const names = nameSchemas()
  const { schemas } = z.toJSONSchema(names, { io: 'input', uri: (id) => `#/components/schemas/${id}` })
  return {
    openapi: '3.1.0',
    info: {
      title: 'Tenths',
      version,
      description: 'Lengths are whole nanometres. Every change carries an Idempotency-Key: the same key again is '
        + 'answered with the first answer. Problems are RFC 9457 problem details with a code.',
    },
    paths: pathsOf(names),
    components: {
      schemas: Object.fromEntries(Object.entries(schemas).sort(byName).map(([name, schema]) => [name, withoutIds(schema)])),
      securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: 'tenths_session' } },
    },
  }
}

/** A name for every exported schema of the contract and for each route's own, so that they refer to each other. */
function nameSchemas(): Names {
  const names: Names = z.registry<{ id: string }>()
  const add = (id: string, value: unknown) => {
    if (value instanceof z.ZodType && !names.has(value)) names.add(value, { id })
  }
  for (const [name, value] of Object.entries(contract)) add(name, value)
  for (const [name, route] of Object.entries(contract.routes)) {
    if (hasFields(route.body)) add(`${name}Body`, route.body)
    add(`${name}Answer`, route.answer)
  }
  return names
}

function pathsOf(names: Names): Json {
  const paths: Record<string, Json> = { [contract.eventStream.path]: { get: streamOperation } }
  for (const [name, route] of Object.entries(contract.routes)) {
    const path = route.path.replaceAll(/:(\w+)/g, '{$1}')
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operationOf(name, route, names) }
  }
  return Object.fromEntries(Object.entries(paths).sort(byName))
}

function operationOf(name: string, route: RouteDefinition, names: Names): Json {
  const parameters = [...parametersIn('path', route.params), ...parametersIn('query', route.query), ...headersOf(route)]
  return {
    operationId: name,
    summary: route.summary,
    'x-audience': route.who,
    security: route.who === 'anyone' ? [] : [{ session: [] }],
    ...(parameters.length === 0 ? {} : { parameters }),
    ...(hasFields(route.body) ? { requestBody: { required: true, content: { 'application/json': refer(route.body, names) } } } : {}),
    responses: {
      [route.status]: { description: 'Done', content: { 'application/json': refer(route.answer, names) } },
      ...problemsOf(route, names),
    },
  }
}

const streamOperation: Json = {
  operationId: 'eventStream',
  summary: contract.eventStream.summary,
  'x-audience': contract.eventStream.who,
  security: [{ session: [] }],
  responses: {
    200: {
      description: `Events ${contract.streamEventNames.join(', ')}; the data of a change is a Change.`,
      content: { 'text/event-stream': { schema: { type: 'string' } } },
    },
  },
}

/** Problems by status, each with the codes that it may carry. */
function problemsOf(route: RouteDefinition, names: Names): Json {
  const codes = new Set<ErrorCode>([
    ...always, ...route.problems,
    ...(route.who === 'anyone' ? [] : ofPeople), ...(route.mutation === 'command' ? ofCommands : []),
  ])
  const responses: Record<number, Json> = {}
  for (const status of new Set([...codes].map((code) => statusOfCode[code]))) {
    const ofStatus = [...codes].filter((code) => statusOfCode[code] === status).sort()
    responses[status] = {
      description: `${STATUS_CODES[status]}: ${ofStatus.join(', ')}`,
      content: { 'application/problem+json': refer(contract.Problem, names) },
    }
  }
  return responses
}

function parametersIn(place: 'path' | 'query', schema: z.ZodType): Json[] {
  const { properties = {}, required = [] } = z.toJSONSchema(schema, { io: 'input' })
  return Object.entries(properties).map(([name, property]) => ({
    name, in: place, required: place === 'path' || required.includes(name), schema: property,
  }))
}

function headersOf(route: RouteDefinition): Json[] {
  const key = { name: 'Idempotency-Key', in: 'header', required: true, schema: { type: 'string', format: 'uuid' } }
  const version = { name: 'If-Match', in: 'header', required: true, schema: { type: 'string', examples: ['"3"'] } }
  return [
    ...(route.mutation === 'command' ? [key] : []),
    ...(route.problems.includes('version-missing') ? [version] : []),
  ]
}

function refer(schema: z.ZodType, names: Names): Json {
  return { schema: { $ref: `#/components/schemas/${names.get(schema)?.id}` } }
}

function hasFields(schema: z.ZodType): boolean {
  return Object.keys(z.toJSONSchema(schema, { io: 'input' }).properties ?? {}).length > 0
}

/** Within the document a schema is called by its place, not by an address of its own. */
function withoutIds({ $id: _id, $schema: _schema, ...schema }: Json): Json {
  return schema
}

const byName = ([one]: [string, unknown], [other]: [string, unknown]): number => (one < other ? -1 : 1)
