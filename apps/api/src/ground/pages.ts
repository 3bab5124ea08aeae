import { existsSync } from 'node:fs'
import type { IncomingMessage, ServerResponse } from 'node:http'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { prismaFolder } from '../database/migrations.ts'
import { Refusal } from '../refusal.ts'

export type Pages = (request: IncomingMessage, response: ServerResponse) => void

/**
 * The built pages, as a handler for all that is not the API's. Behind a proxy they take their origin from ORIGIN;
 * else from the address in the browser's own bar, so that localhost, 127.0.0.1 and the shop's network all work.
 */
export async function loadPages(where: { origin: string | undefined; overTls: boolean }): Promise<Pages> {
  const file = path.join(prismaFolder, '..', 'apps/web/build/handler.js')
  if (!existsSync(file)) throw new Refusal('The pages are not built: start with `npm start`, or run `npm run build` first.')
  // The handler reads its environment when it is loaded.
  if (where.origin === undefined) {
    process.env['PROTOCOL_HEADER'] = 'x-forwarded-proto'
    delete process.env['ORIGIN']
  }
  const { handler } = (await import(pathToFileURL(file).href)) as { handler: Pages }
  if (where.origin !== undefined) return handler
  return (request, response) => {
    request.headers['x-forwarded-proto'] = where.overTls ? 'https' : 'http'
    handler(request, response)
  }
}
