import 'fake-indexeddb/auto'
import { listBenches, readOperation, whoAmI } from '@tenths/contract'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { callKept } from './call-kept.ts'
import { foldIn } from './fold-in.ts'
import { clearKept, keepAnswer, keptAnswer } from './kept-answers.ts'
import { whoIsHere } from './kept-person.ts'

// A page out of sight: nothing waits for it to be painted.
vi.stubGlobal('document', { hidden: true })
afterEach(clearKept)

const answers = (body: unknown, status = 200) => async () => Response.json(body, { status })
const away = () => Promise.reject(new TypeError('Failed to fetch'))
const refusal = { code: 'not-signed-in', detail: 'Sign in first.', status: 401 }
const kept = (address: string, answer: unknown) => vi.waitFor(async () => expect(await keptAnswer(address)).toEqual(answer))

describe('what was opened at a bench', () => {
  it('is shown again while the server cannot be reached, as it was read last', async () => {
    const queue = { benches: [{ id: 'b', name: 'Hone', kind: 'hone', waiting: 2 }] }
    await callKept(listBenches, {}, { fetch: answers({ benches: [] }) })
    await callKept(listBenches, {}, { fetch: answers(queue) })
    await kept('/api/benches', queue)
    expect(await callKept(listBenches, {}, { fetch: away })).toEqual(queue)
    const gateway = (status: number) => async () => new Response('<html>', { status })
    expect(await callKept(listBenches, {}, { fetch: gateway(502) })).toEqual(queue)
    expect(await callKept(listBenches, {}, { fetch: gateway(200) })).toEqual(queue)
    expect(await keptAnswer('/api/benches')).toEqual(queue)
  })

  it('is not shown in place of a refusal, and what was never opened is not there', async () => {
    await keepAnswer('/api/benches', { benches: [] })
    await expect(callKept(listBenches, {}, { fetch: answers(refusal, 401) })).rejects.toMatchObject({ code: 'not-signed-in' })
    await expect(callKept(readOperation, { params: { number: 1, key: 'hone' } }, { fetch: away })).rejects.toMatchObject({ code: 'not-kept' })
  })

  it('is shown within moments where a network swallows all that is sent, once it has done so', async () => {
    await keepAnswer('/api/benches', { benches: [] })
    await callKept(listBenches, {}, { fetch: away })
    const swallowed: typeof fetch = (_, request) => new Promise((_answered, fail) => {
      request?.signal?.addEventListener('abort', () => fail(request.signal?.reason as Error))
    })
    const asked = performance.now()
    expect(await callKept(listBenches, {}, { fetch: swallowed })).toEqual({ benches: [] })
    expect(performance.now() - asked).toBeLessThan(4_000)
  })

  it('is cleared when another person signs in', async () => {
    await whoIsHere({ fetch: answers({ id: 'A' }) })
    await kept(whoAmI.path, { id: 'A' })
    await keepAnswer('/api/benches', { benches: [] })
    await whoIsHere({ fetch: answers({ id: 'A' }) })
    expect(await keptAnswer('/api/benches')).toEqual({ benches: [] })
    await whoIsHere({ fetch: answers({ id: 'B' }) })
    expect(await keptAnswer('/api/benches')).toBeUndefined()
    expect(await whoIsHere({ fetch: away })).toEqual({ id: 'B' })
  })

  it('shows what has arrived since it was read', async () => {
    const sheet = { job: { id: 'j' }, operation: { key: 'hone' }, waitsFor: [], work: { running: false, minutes: 0 } }
    await keepAnswer('/api/jobs/7/operations/hone', sheet)
    await keepAnswer('/api/jobs/77/operations/hone', { ...sheet, job: { id: 'other' } })
    await foldIn([{
      kind: 'clock', id: 'c', action: 'start', deviceOffset: null, personId: 'A', by: 'A', jobId: 'j', jobNumber: 7, operationKey: 'hone',
      operationTitle: 'Hone', behind: false, deviceAt: '2030-01-01T00:00:00Z',
    }])
    expect(await keptAnswer('/api/jobs/7/operations/hone')).toMatchObject({ work: { running: true } })
    expect(await keptAnswer('/api/jobs/77/operations/hone')).toMatchObject({ work: { running: false } })
  })
})
