import type { Plugin } from 'vite'

/** What a page needs of a route; the server has the rest. */
const kept = new Set(['method', 'path', 'mutation'])

/**
 * Takes the schemas of the wire out of what the browser loads (decision 012): in the contract's modules every schema, named
 * like a type, becomes undefined, and a route keeps its method, its address and how it mutates. A name in capitals is a
 * figure and stays. A page that tried to use a schema would fail at once.
 */
export const withoutSchemas: Plugin = {
  name: 'without-schemas',
  enforce: 'post',
  transform: {
    filter: { id: /\/packages\/contract\/src\// },
    handler(code) {
      if (this.environment.config.consumer !== 'client') return null
      const module = this.parse(code) as unknown as { readonly body: readonly Statement[] }
      return { code: without(code, module.body.flatMap(unused)), map: null }
    },
  },
}

// Of the parsed module as much as is looked at.

interface Expression {
  readonly start: number
  readonly end: number
  readonly callee?: { readonly name?: string }
  readonly arguments?: readonly { readonly properties?: readonly { readonly key: { readonly name?: string }; readonly value: Expression }[] }[]
}

interface Statement {
  readonly declaration?: Statement | null
  readonly declarations?: readonly { readonly id: { readonly name?: string }; readonly init: Expression | null }[]
}

function unused(statement: Statement): readonly Expression[] {
  const { declarations = [] } = statement.declaration ?? statement
  return declarations.flatMap(({ id, init }) => {
    if (init !== null && /^[A-Z]\w*[a-z]/.test(id.name ?? '')) return [init]
    if (init?.callee?.name !== 'route') return []
    const properties = init.arguments?.[0]?.properties ?? []
    return properties.filter(({ key }) => !kept.has(key.name ?? '')).map(({ value }) => value)
  })
}

function without(code: string, expressions: readonly Expression[]): string {
  return expressions.toSorted((one, other) => other.start - one.start)
    .reduce((text, { start, end }) => `${text.slice(0, start)}undefined${text.slice(end)}`, code)
}
