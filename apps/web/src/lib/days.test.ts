import { afterEach, describe, expect, it, vi } from 'vitest'
import { sayDay, sayDayOff, sayInstant, sayMinutes, shopDay } from './days.ts'

describe('days and hours as the shop says them', () => {
  afterEach(() => { vi.useRealTimers() })

  it('names a promised day alike in every zone', () => {
    expect(sayDay('2026-03-06')).toBe('Fri 6 Mar 2026')
  })

  it('remarks on a Saturday and a Sunday, in every zone alike, and on nothing else', () => {
    const week = ['2026-03-06', '2026-03-07', '2026-03-08', '2026-03-09'].map((day) => sayDayOff(day)?.split(':')[0])
    expect(week).toEqual([undefined, 'A Saturday', 'A Sunday', undefined])
    expect(sayDayOff('')).toBeUndefined()
  })

  it('says an instant in the shop’s zone, on either side of a change of the clocks', () => {
    expect(sayInstant('2026-03-29T00:30:00Z', 'Europe/Lisbon')).toContain('00:30')
    expect(sayInstant('2026-03-29T01:30:00Z', 'Europe/Lisbon')).toContain('02:30')
  })

  it('takes today from the shop’s zone, not the browser’s', () => {
    vi.useFakeTimers({ now: new Date('2026-12-31T23:30:00Z') })
    expect([shopDay('UTC'), shopDay('Asia/Tokyo'), shopDay('UTC', 14)]).toEqual(['2026-12-31', '2027-01-01', '2027-01-14'])
  })

  it('says minutes as hours once there are any', () => {
    expect([sayMinutes(45), sayMinutes(60), sayMinutes(125)]).toEqual(['45 min', '1 h', '2 h 05 min'])
  })
})
