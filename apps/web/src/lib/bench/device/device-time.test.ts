import { afterEach, expect, it, vi } from 'vitest'
import { noteServerClock } from '../../api/reach.ts'
import { serviceTime } from './device-time.ts'

afterEach(() => vi.unstubAllGlobals())

it('a time long enough ago is reckoned by the shop’s clock, however far the tablet’s own is off', () => {
  const kept = new Map<string, string>()
  vi.stubGlobal('localStorage', { getItem: (name: string) => kept.get(name) ?? null, setItem: (name: string, text: string) => kept.set(name, text) })
  expect(Math.abs(serviceTime() - Date.now())).toBeLessThan(1_000)
  const hoursBehind = new Date(Date.now() - 3 * 3_600_000)
  noteServerClock(hoursBehind.toUTCString())
  expect(Math.abs(serviceTime() - hoursBehind.getTime())).toBeLessThan(2_000)
})
