import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { LOCK_MINUTES, verifyPin } from '../../../apps/api/src/people/pin.ts'
import { ServiceError } from '../../../apps/api/src/http/problem.ts'
import { key, startShop, type TestShop } from '../../support/shop.ts'
import { testSecrets } from '../../support/stock.ts'

let shop: TestShop
beforeAll(async () => { shop = await startShop() })
beforeEach(async () => { await shop.pool.query('DELETE FROM pin_lock') })
afterAll(() => shop.stop())

const noon = new Date('2031-05-02T12:00:00Z')
const later = (minutes: number) => new Date(noon.getTime() + minutes * 60_000)

interface Try { device?: string | null; now?: Date }

/** `right`, or the code of the refusal. */
async function tryPin(pin: string, { device = null, now = noon }: Try = {}): Promise<string> {
  try {
    await verifyPin(shop.pool, { personId: shop.people.machinist.id, pin, device, pepper: testSecrets.pinPepper, now })
    return 'right'
  } catch (error) {
    if (error instanceof ServiceError) return error.code
    throw error
  }
}

describe('a PIN', () => {
  it('is refused when wrong, and locked for 15 minutes after the fifth wrong one, even for the right PIN', async () => {
    const { pin } = shop.people.machinist
    const codes = []
    for (let round = 0; round < 5; round += 1) codes.push(await tryPin('000000'))
    expect(codes).toEqual(['pin-wrong', 'pin-wrong', 'pin-wrong', 'pin-wrong', 'pin-locked'])
    expect(await tryPin(pin)).toBe('pin-locked')
    expect(await tryPin(pin, { now: later(LOCK_MINUTES - 1) })).toBe('pin-locked')
    expect(await tryPin(pin, { now: later(LOCK_MINUTES + 1) })).toBe('right')
  })

  it('starts a new count after the lock and after the right PIN', async () => {
    const { pin } = shop.people.machinist
    for (let round = 0; round < 4; round += 1) await tryPin('000000')
    expect(await tryPin(pin)).toBe('right')
    for (let round = 0; round < 4; round += 1) expect(await tryPin('000000')).toBe('pin-wrong')
  })

  it('gives no more than five guesses to a hundred that come at once', async () => {
    const guesses = Array.from({ length: 100 }, (_, index) => String(900_000 + index))
    const codes = await Promise.all(guesses.map((guess) => tryPin(guess)))
    expect(codes.filter((code) => code === 'pin-wrong')).toHaveLength(4)
    expect(codes.filter((code) => code === 'pin-locked')).toHaveLength(96)
  })

  it('counts each bench device by itself', async () => {
    for (let round = 0; round < 5; round += 1) await tryPin('000000')
    expect(await tryPin(shop.people.machinist.pin, { device: 'b5b1d0f8-57a5-4a1f-bc1c-3f1d2f3c9a10' })).toBe('right')
  })

  it('is worth nothing without the pepper of the data folder', async () => {
    const { id: personId, pin } = shop.people.machinist
    const stolen = verifyPin(shop.pool, { personId, pin, device: null, pepper: '00'.repeat(32), now: noon })
    await expect(stolen).rejects.toMatchObject({ code: 'pin-wrong' })
  })

  it('must have been chosen', async () => {
    const id = crypto.randomUUID()
    const body = { id, name: 'New Hand', signInName: 'newhand', password: 'ten letters and more', pin: null, roles: ['machinist'] }
    await shop.as('owner').post('/api/people').set(key()).send(body).expect(201)
    const missing = verifyPin(shop.pool, { personId: id, pin: '123456', device: null, pepper: testSecrets.pinPepper, now: noon })
    await expect(missing).rejects.toMatchObject({ code: 'pin-missing' })
  })

  it('is changed with the password as proof', async () => {
    const { password } = shop.people.second
    const change = (body: object) => shop.as('second').put('/api/me/pin').set(key()).send(body)
    const refused = await change({ password: 'wrong', pin: '111222' }).expect(403)
    expect(refused.body).toMatchObject({ code: 'sign-in-refused', field: 'password' })
    await change({ password, pin: '111222' }).expect(200)
    const { id: personId, pin } = shop.people.second
    const withNew = { personId, pin: '111222', device: null, pepper: testSecrets.pinPepper, now: noon }
    await expect(verifyPin(shop.pool, withNew)).resolves.toBeUndefined()
    await expect(verifyPin(shop.pool, { ...withNew, pin })).rejects.toMatchObject({ code: 'pin-wrong' })
  })
})
