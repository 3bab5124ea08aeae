import { addCustomer, changeCustomer, findCustomers, readJob } from '@tenths/contract'
import { describe, expect, it } from 'vitest'
import { address, call } from './call.ts'
import { ProblemError } from './problem.ts'
import { onReach } from './reach.ts'

const id = '01890000-0000-7000-8000-000000000001'
const customer = { name: 'Ada', phone: '', email: '' }

/** A server that answers one thing and remembers what it was asked. */
function server(answer: () => Response) {
  const asked: { url: string; method: string; headers: Headers; body: unknown }[] = []
  const fetch = async (url: RequestInfo | URL, request?: RequestInit): Promise<Response> => {
    asked.push({
      url: String(url), method: request?.method ?? 'GET', headers: new Headers(request?.headers),
      body: typeof request?.body === 'string' ? JSON.parse(request.body) : undefined,
    })
    return answer()
  }
  return { asked, fetch }
}

describe('a call of the API', () => {
  it('fills the address in, escaped, and leaves empty queries out', () => {
    expect(address('/api/jobs/:number/operations/:key', { number: 7, key: 'a b/c' })).toBe('/api/jobs/7/operations/a%20b%2Fc')
    expect(address('/api/customers', {}, { search: '', page: 2 })).toBe('/api/customers?page=2')
  })

  it('names each command with a key of its own, and an edit with the version that was read', async () => {
    const { asked, fetch } = server(() => Response.json({ id, version: 2, ...customer }))
    await call(addCustomer, { body: { id, ...customer } }, { fetch })
    await call(changeCustomer, { params: { id }, body: customer }, { fetch, key: id, ifMatch: 1 })
    await call(findCustomers, { query: { search: 'ada' } }, { fetch })
    expect(asked[0]?.headers.get('idempotency-key')).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7/)
    expect(asked[1]).toMatchObject({ url: `/api/customers/${id}`, method: 'PUT', body: customer })
    expect([asked[1]?.headers.get('idempotency-key'), asked[1]?.headers.get('if-match')]).toEqual([id, '"1"'])
    expect(asked[2]?.headers.has('idempotency-key')).toBe(false)
  })

  it('turns a refusal into its code, a sentence and the fields to blame', async () => {
    const problem = {
      type: 'about:blank', title: 'x', status: 422, code: 'engine-impossible', detail: 'Too short.', field: 'parts.rod.length', requestId: 'r',
    }
    const { fetch } = server(() => Response.json(problem, { status: 422 }))
    const refused = await call(readJob, { params: { number: 1 } }, { fetch }).catch((error: unknown) => error)
    expect(refused).toBeInstanceOf(ProblemError)
    expect(refused).toMatchObject({ code: 'engine-impossible', status: 422, message: 'Too short.', fields: { 'parts.rod.length': 'Too short.' } })
  })

  it('says in its own words that no answer came, or none that can be read', async () => {
    const away = call(readJob, { params: { number: 1 } }, { fetch: () => Promise.reject(new TypeError('failed')) })
    await expect(away).rejects.toMatchObject({ code: 'no-network', status: 0 })
    const { fetch } = server(() => new Response('<html>', { status: 502 }))
    await expect(call(readJob, { params: { number: 1 } }, { fetch })).rejects.toMatchObject({ code: 'answer-unreadable', status: 502 })
  })

  it('takes nothing for the service’s answer that something on the way gave in its place, or that broke off', async () => {
    const found: boolean[] = []
    onReach(({ reached }) => { if (reached !== undefined) found.push(reached) })
    const portal = server(() => new Response('<html>Sign in to this network', { status: 200 }))
    await expect(call(readJob, { params: { number: 1 } }, { fetch: portal.fetch })).rejects.toMatchObject({ code: 'answer-unreadable', status: 0 })
    const half = server(() => new Response(new ReadableStream({
      start: (body) => { body.enqueue(new TextEncoder().encode('{"number"')); body.error(new TypeError('cut off')) },
    })))
    await expect(call(readJob, { params: { number: 1 } }, { fetch: half.fetch })).rejects.toMatchObject({ code: 'no-network' })
    const { fetch } = server(() => Response.json({ number: 1 }))
    await call(readJob, { params: { number: 1 } }, { fetch })
    expect(found).toEqual([false, false, true])
  })
})
