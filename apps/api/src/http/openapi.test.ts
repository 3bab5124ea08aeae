import { routes } from '@tenths/contract'
import { describe, expect, it } from 'vitest'
import { openapi } from './openapi.ts'

interface Operation {
  operationId: string
  'x-audience': unknown
  parameters?: { name: string; in: string }[]
  responses: Record<string, { description: string }>
}
const document = openapi('1.2.3') as {
  openapi: string
  paths: Record<string, Record<string, Operation>>
  components: { schemas: Record<string, unknown> }
}

describe('the description of the interface', () => {
  it('has every route with its audience and what it answers', () => {
    for (const [name, route] of Object.entries(routes)) {
      const operation = document.paths[route.path.replaceAll(/:(\w+)/g, '{$1}')]?.[route.method.toLowerCase()]
      expect(operation?.operationId).toBe(name)
      expect(operation?.['x-audience']).toEqual(route.who)
      const said = Object.values(operation?.responses ?? {}).map(({ description }) => description).join(' ')
      for (const code of route.problems) expect(said, name).toContain(code)
      const inPath = operation?.parameters?.filter((parameter) => parameter.in === 'path').map((parameter) => parameter.name) ?? []
      expect(inPath).toEqual([...route.path.matchAll(/:(\w+)/g)].map(([, parameter]) => parameter))
      const needsKey = operation?.parameters?.some((parameter) => parameter.name === 'Idempotency-Key') ?? false
      expect(needsKey, name).toBe(route.mutation === 'command')
    }
  })

  it('refers to nothing that it does not hold', () => {
    const referred = [...JSON.stringify(document).matchAll(/"\$ref":"#\/components\/schemas\/([^"]+)"/g)].map(([, name]) => String(name))
    expect(referred.length).toBeGreaterThan(100)
    expect(referred.filter((name) => !(name in document.components.schemas))).toEqual([])
  })
})
