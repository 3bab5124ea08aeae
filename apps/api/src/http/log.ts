import type { FastifyRequest, FastifyServerOptions } from 'fastify'

/** Where log lines go when not to standard output. */
export interface LogStream {
  write(line: string): void
}

/**
 * What the log says of a request and of an error. Of an address only the route's pattern is kept, because the rest may
 * be a status link's token or a customer's name; of an error only what its author wrote. Bodies and headers are
 * never logged.
 */
export function logOptions(level: string, stream?: LogStream): NonNullable<FastifyServerOptions['logger']> {
  return {
    level,
    ...(stream === undefined ? {} : { stream }),
    serializers: {
      req: (request: FastifyRequest) => ({ method: request.method, route: routeOf(request) }),
      err: (error: Error & { code?: unknown }) => ({
        type: error.name, code: error.code, message: withoutTokens(error.message), stack: withoutTokens(error.stack ?? ''),
      }),
    },
    redact: { paths: ['*.pin', '*.password', '*.secret', '*.token', '*.cookie', '*.authorization'], censor: '…' },
  }
}

/** The pattern of an API route; of a page its path, the token of a status link cut out. */
function routeOf(request: FastifyRequest): string {
  const pattern = request.routeOptions.url
  if (pattern !== undefined && !pattern.includes('*')) return pattern
  return withoutTokens(request.url.split('?', 1)[0] ?? '')
}

/** Cuts a status link's token out of a text. */
function withoutTokens(text: string): string {
  return text.replaceAll(/(\/s\/|\/api\/status\/)[^/\s?#"']+/g, '$1…')
}
