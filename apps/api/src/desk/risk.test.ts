import { describe, expect, it } from 'vitest'
import { isThisWeek, riskOf, workingDays } from './risk.ts'

// 2026-03-02 is a Monday; the clocks of many places go forward on 2026-03-08 and 2026-03-29
describe('days until a promise', () => {
  it('count Mondays to Fridays, today and the promised day included', () => {
    expect(workingDays('2026-03-02', '2026-03-02')).toBe(1)
    expect(workingDays('2026-03-02', '2026-03-08')).toBe(5)
    expect(workingDays('2026-03-06', '2026-03-09')).toBe(2)
    expect(workingDays('2026-03-07', '2026-03-08')).toBe(0)
    expect(workingDays('2026-03-02', '2026-03-31')).toBe(22)
    expect(workingDays('2026-03-03', '2026-03-02')).toBe(0)
  })

  it('put a job at risk when its minutes do not fit, and say on what that rests', () => {
    expect(riskOf(480, '2026-03-02', '2026-03-02').isAtRisk).toBe(false)
    const risk = riskOf(481, '2026-03-02', '2026-03-02')
    expect(risk.isAtRisk).toBe(true)
    expect(risk.reason).toContain('one person on it, 8 hours a day')
  })

  it('put a late job at risk however little is left', () => {
    expect(riskOf(5, '2026-03-03', '2026-03-02')).toMatchObject({ isAtRisk: true, workingDaysLeft: 0 })
  })

  it('know this week from Monday to Sunday', () => {
    expect(isThisWeek('2026-03-05', '2026-03-02')).toBe(true)
    expect(isThisWeek('2026-03-05', '2026-03-08')).toBe(true)
    expect(isThisWeek('2026-03-05', '2026-03-09')).toBe(false)
  })
})
