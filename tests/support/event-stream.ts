import { request, type IncomingMessage } from 'node:http'
import type { FastifyInstance } from 'fastify'

export interface StreamedEvent {
  readonly id: string
  readonly event: string
  readonly data: { readonly kind?: string; readonly jobId?: string | null; readonly operationKey?: string | null }
}

export interface TestStream {
  readonly seen: StreamedEvent[]
  /** Resolves with everything seen once the condition holds; rejects after the time. */
  until(condition: (seen: StreamedEvent[]) => boolean, milliseconds?: number): Promise<StreamedEvent[]>
  readonly ended: Promise<void>
  close(): void
}

/** The session cookie of a person, for requests that supertest cannot hold open. */
export async function signInCookie(app: FastifyInstance, person: { signInName: string; password: string }): Promise<string> {
  const { signInName, password } = person
  const answer = await app.inject({ method: 'POST', url: '/api/sign-in', payload: { signInName, password } })
  return answer.cookies.map(({ name, value }) => `${name}=${value}`).join('; ')
}

/** Opens the stream of changes as a browser does, on a port of loopback. */
export async function openStream(port: number, cookie: string, lastId?: string): Promise<TestStream> {
  const seen: StreamedEvent[] = []
  const waiting = new Set<() => void>()
  const headers = { cookie, 'accept-encoding': 'br, gzip', ...(lastId === undefined ? {} : { 'last-event-id': lastId }) }
  const sent = request({ host: '127.0.0.1', port, path: '/api/events', headers })
  sent.end()
  const response = await new Promise<IncomingMessage>((resolve, reject) => {
    sent.once('response', resolve)
    sent.once('error', reject)
  })
  if (response.statusCode !== 200) throw new Error(`The stream answered ${response.statusCode}.`)
  let rest = ''
  response.setEncoding('utf8').on('data', (text: string) => {
    const blocks = (rest + text).split('\n\n')
    rest = blocks.pop() ?? ''
    seen.push(...blocks.flatMap(eventOf))
    for (const look of waiting) look()
  })
  response.on('error', () => undefined)
  return {
    seen,
    until: (condition, milliseconds = 8_000) => new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        waiting.delete(look)
        reject(new Error(`The stream showed only ${JSON.stringify(seen)}`))
      }, milliseconds)
      const look = () => {
        if (!condition(seen)) return
        clearTimeout(timer)
        waiting.delete(look)
        resolve(seen)
      }
      waiting.add(look)
      look()
    }),
    ended: new Promise((resolve) => void response.once('close', resolve)),
    close: () => void sent.destroy(),
  }
}

function eventOf(block: string): StreamedEvent[] {
  const field = (name: string) => new RegExp(`^${name}: (.*)$`, 'm').exec(block)?.[1]
  const event = field('event')
  return event === undefined ? [] : [{ id: field('id') ?? '', event, data: JSON.parse(field('data') ?? '{}') }]
}
