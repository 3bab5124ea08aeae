import compress from '@fastify/compress'
import cookie from '@fastify/cookie'
import rateLimit from '@fastify/rate-limit'
import fastify, { type FastifyInstance, type RouteOptions as RegisteredRoute } from 'fastify'
import { randomUUID } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { constants as zlib } from 'node:zlib'
import type { Pool } from 'pg'
import { apiRoutes } from './api-routes.ts'
import { forgetOldAnswers } from './commands/forget-old-answers.ts'
import { createPrismaClient, currentSchema } from './database/prisma.ts'
import { openAnnouncer } from './events/announcer.ts'
import { refuseOtherSites } from './http/cross-site.ts'
import { setSecurityHeaders } from './http/headers.ts'
import { logOptions, type LogStream } from './http/log.ts'
import { problemOf, ServiceError } from './http/problem.ts'
import { openSessions } from './people/sessions.ts'
import { limitStatus } from './status/limit.ts'
import type { Secrets } from './shop.ts'

export interface AppOptions {
  /** Connections of the service's login; they stay the caller's to end, after the app is closed. */
  readonly pool: Pool
  readonly secrets: Secrets
  /** Public address behind a reverse proxy, such as `https://shop.example`. */
  readonly origin?: string | undefined
  /** Certificate and key, PEM, when this process itself serves over TLS. */
  readonly tls?: { readonly cert: string | Buffer; readonly key: string | Buffer } | undefined
  readonly logLevel?: string
  /** Where log lines go; standard output when left out. */
  readonly logStream?: LogStream
  /** The server's clock. */
  readonly now?: () => Date
  /** Answers whatever is not /api: the pages. */
  readonly pages?: (request: IncomingMessage, response: ServerResponse) => void
}

/**
 * Builds the whole service and never listens: the server and the tests use the same one.
 */
export async function createApp(options: AppOptions): Promise<FastifyInstance> {
  const { pool, secrets, origin, tls, pages } = options
  const app = fastify({
    logger: logOptions(options.logLevel ?? 'warn', options.logStream),
    genReqId: () => randomUUID(),
    // One proxy is trusted, and only where the owner says that there is one.
    trustProxy: origin === undefined ? false : (_address, hop) => hop === 0,
    https: tls ?? null,
    forceCloseConnections: 'idle',
  }) as unknown as FastifyInstance

  const schema = await currentSchema(pool)
  const prisma = createPrismaClient(pool, schema)
  const announcer = openAnnouncer(pool, schema)
  app.decorate('shop', {
    pool, schema, prisma, secrets, announcer, origin,
    sessions: openSessions(pool), now: options.now ?? (() => new Date()), hasCertificate: tls !== undefined,
  })
  app.decorate('registeredRoutes', [])
  app.addHook('onRoute', (route) => void app.registeredRoutes.push(route))
  app.decorateRequest('person', null)
  const forgetting = setInterval(() => {
    forgetOldAnswers(pool, app.shop.now()).catch((error: unknown) => app.log.warn({ err: error }, 'Old answers are still kept.'))
  }, 60 * 60 * 1000)
  forgetting.unref()
  app.addHook('onClose', async () => {
    clearInterval(forgetting)
    await announcer.close()
    await prisma.$disconnect()
  })

  const isOverTls = tls !== undefined || origin?.startsWith('https:') === true
  app.addHook('onRequest', async (request, reply) => {
    setSecurityHeaders(request, reply, isOverTls)
    reply.raw.setHeader('request-id', request.id)
    refuseOtherSites(request, origin)
  })
  app.setErrorHandler((error, request, reply) => {
    const { problem, retryAfter } = problemOf(error, request.id)
    if (problem.status >= 500) request.log.error({ err: error }, problem.detail)
    if (retryAfter !== undefined) void reply.header('retry-after', retryAfter)
    return reply.code(problem.status).type('application/problem+json').send(problem)
  })

  app.setNotFoundHandler(() => {
    throw new ServiceError('not-found', 'There is nothing at this address.')
  })

  // A step's page shrinks to a tenth on its way to a tablet on a weak network.
  await app.register(compress, { encodings: ['br', 'gzip'], brotliOptions: { params: { [zlib.BROTLI_PARAM_QUALITY]: 4 } } })
  await app.register(cookie)
  await app.register(rateLimit, { global: false })
  await app.register(apiRoutes)
  if (pages !== undefined) await app.register(async (scope) => mountPages(scope, pages))
  return app
}

/** Pages answer by themselves, body and all. */
function mountPages(app: FastifyInstance, pages: NonNullable<AppOptions['pages']>): void {
  app.removeAllContentTypeParsers()
  app.addContentTypeParser('*', (_request, _payload, done) => done(null))
  const limit = limitStatus(app)
  app.addHook('onRequest', async (request) => {
    if (request.url.startsWith('/s/')) await limit(request)
  })
  // A page that is rendered here asks the API within the process: no network, no certificate to trust.
  const askApi = (url: string) => app.inject({ url })
  app.all('/*', (request, reply) => {
    reply.hijack()
    pages(Object.assign(request.raw, { askApi }), reply.raw)
  })
}

declare module 'fastify' {
  interface FastifyInstance {
    /** Every route as it was registered, for the tests that look at all of them. */
    registeredRoutes: RegisteredRoute[]
  }
}
