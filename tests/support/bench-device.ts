import { randomUUID } from 'node:crypto'
import { deviceCodeAlphabet, deviceCodeLength } from '@tenths/contract'
import { key, type Agent, type TestShop } from './shop.ts'
import type { TestPerson } from './stock.ts'

/** A code as the owner's page draws it. */
export function drawCode(): string {
  return Array.from({ length: deviceCodeLength }, () =>
    deviceCodeAlphabet[Math.floor(Math.random() * deviceCodeAlphabet.length)]).join('')
}

export interface TestDevice {
  readonly id: string
  readonly name: string
  /** The browser on the tablet. */
  readonly agent: Agent
}

/** Has the owner register a tablet at a bench and types its code there. */
export async function addDevice(shop: TestShop, name: string, benchKind = 'hone'): Promise<TestDevice> {
  const id = randomUUID()
  const secret = drawCode()
  await shop.as('owner').post('/api/devices').set(key()).send({ id, name, benchId: shop.benches[benchKind], secret }).expect(201)
  const agent = shop.anonymous()
  await agent.post('/api/device/enrolment').send({ secret }).expect(200)
  return { id, name, agent }
}

/** Touches a name on the tablet and types a PIN. */
export function takeOver(device: Pick<TestDevice, 'agent'>, person: Pick<TestPerson, 'id' | 'pin'>, pin = person.pin) {
  return device.agent.post('/api/device/take-over').send({ personId: person.id, pin })
}
