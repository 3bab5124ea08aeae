import { createHash } from 'node:crypto'
import pg from 'pg'

const names = new Map<string, string>()

/**
 * A connection that has Postgres parse and plan each statement once: one with values is prepared under a name made from its
 * text, and later only bound. A reading needs some twenty statements one after the other, and planning took longer than
 * running most of them.
 */
export class PreparingClient extends pg.Client {
  override query: pg.Client['query'] = ((config: unknown, values?: unknown, callback?: unknown) => (
    typeof config === 'string' && Array.isArray(values)
      ? super.query({ name: nameOf(config), text: config, values }, callback as never)
      : super.query(config as never, values as never, callback as never)
  )) as pg.Client['query']
}

/** Texts are constants of the program, few and never made from input: the same one has the same name everywhere. */
function nameOf(text: string): string {
  let name = names.get(text)
  if (name === undefined) names.set(text, name = createHash('sha256').update(text).digest('base64url'))
  return name
}
