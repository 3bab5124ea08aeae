import { afterEach, expect, it, vi } from 'vitest'
import { shopDay } from '../days.ts'
import { noteServerClock, serverTime } from './reach.ts'

afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

it('a time long enough ago, and the day today, are reckoned by the shop’s clock, however far the tablet’s own is off', () => {
  vi.useFakeTimers({ now: new Date('2030-06-15T12:00:00Z') })
  const kept = new Map<string, string>()
  vi.stubGlobal('localStorage', { getItem: (name: string) => kept.get(name) ?? null, setItem: (name: string, text: string) => kept.set(name, text) })
  expect(Math.abs(serverTime() - Date.now())).toBeLessThan(1_000)
  const hoursBehind = new Date(Date.now() - 3 * 3_600_000)
  noteServerClock(hoursBehind.toUTCString())
  expect(Math.abs(serverTime() - hoursBehind.getTime())).toBeLessThan(2_000)
  const twoDaysAhead = new Date(Date.now() + 48 * 3_600_000)
  noteServerClock(twoDaysAhead.toUTCString())
  expect(shopDay('UTC')).toBe('2030-06-17')
})
