import { roles, routes, type RouteDefinition } from '@tenths/contract'
import type { AddressInfo } from 'node:net'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { signInCookie } from '../../support/event-stream.ts'
import { startShop, type TestShop } from '../../support/shop.ts'

const callers = ['anonymous', ...roles] as const
type Caller = (typeof callers)[number]

let shop: TestShop
const cookies = new Map<Caller, string>()
beforeAll(async () => {
  shop = await startShop()
  for (const role of roles) cookies.set(role, await signInCookie(shop.app, shop.people[role]))
})
afterAll(() => shop.stop())

// Signing out ends the session that the other rows of the table need: it comes last.
const table = Object.entries(routes).sort(([one], [other]) => Number(one === 'signOut') - Number(other === 'signOut'))

/** An address of the right form that leads to nothing. */
function addressOf(route: RouteDefinition): string {
  return route.path.replaceAll(/:(\w+)/g, (_, name: string) => (name === 'number' ? '999999' : crypto.randomUUID()))
}

/** Calls with an empty body and no key: whoever is let through meets a later refusal, which is another one. */
async function call(route: RouteDefinition, caller: Caller): Promise<{ status: number; code: string | undefined }> {
  const { port } = shop.app.server.address() as AddressInfo
  const answer = await fetch(`http://127.0.0.1:${port}${addressOf(route)}`, {
    method: route.method,
    headers: { cookie: cookies.get(caller) ?? '', 'content-type': 'application/json' },
    ...(route.method === 'GET' ? {} : { body: '{}' }),
  })
  const body = (await answer.json()) as { code?: string }
  return { status: answer.status, code: body.code }
}

function mayCall(route: RouteDefinition, caller: Caller): boolean {
  return route.who === 'anyone' || (caller !== 'anonymous' && route.who.includes(caller))
}

describe('each role is refused what is not its own, on every route', () => {
  it('the machinist may not read customers, nor the counter sign for readings', async () => {
    expect(await call(routes['findCustomers'] as RouteDefinition, 'machinist')).toMatchObject({ status: 403 })
    expect(await call(routes['takeReadings'] as RouteDefinition, 'counter')).toMatchObject({ status: 403 })
  })

  it.each(table)('%s', async (_name, route) => {
    for (const caller of callers) {
      const { status, code } = await call(route, caller)
      const refusal = caller === 'anonymous' ? 'not-signed-in' : 'not-allowed'
      if (mayCall(route, caller)) {
        expect(['not-signed-in', 'not-allowed'], `${caller} is let through`).not.toContain(code)
        expect(status, `${caller} meets no fault of ours`).toBeLessThan(500)
      } else {
        expect({ status, code }, `${caller} is refused`).toEqual({ status: caller === 'anonymous' ? 401 : 403, code: refusal })
      }
    }
  })
})
