import { describe, expect, it } from 'vitest'
import { hasRoom } from './room.ts'

const storage = (answer: () => Promise<StorageEstimate>) => ({ estimate: answer })

describe('room on the device', () => {
  it('is missing before the last of it is used up', async () => {
    expect(await hasRoom(0, storage(async () => ({ quota: 50_000_000, usage: 10_000_000 })))).toBe(true)
    expect(await hasRoom(0, storage(async () => ({ quota: 50_000_000, usage: 49_900_000 })))).toBe(false)
    expect(await hasRoom(1_500_000, storage(async () => ({ quota: 50_000_000, usage: 48_000_000 })))).toBe(false)
  })

  it('is taken for granted where the browser does not say', async () => {
    expect(await hasRoom(0, undefined)).toBe(true)
    expect(await hasRoom(0, storage(async () => ({})))).toBe(true)
    expect(await hasRoom(0, storage(() => Promise.reject(new Error('not here'))))).toBe(true)
  })
})
