import { describe, expect, it } from 'vitest'
import { shaftDeviations } from './tables/shaft-deviations.ts'
import { toleranceGrades } from './tables/tolerance-grades.ts'
import { publishedLimits } from './tables/wear-limits.ts'

const tables = [toleranceGrades, shaftDeviations, ...publishedLimits]

describe('published check values', () => {
  it('number 150 at least in the tables alone, each once', () => {
    const values = tables.flatMap(({ title, values: rows }) => rows.map((row) => JSON.stringify([title, row])))
    expect(new Set(values).size).toBe(values.length)
    expect(values.length).toBeGreaterThanOrEqual(150)
  })
  it.each(tables)('$title names source, label, tolerance and the reason for it', ({ source, label, tolerance, reason }) => {
    expect(source.length).toBeGreaterThan(10)
    expect(['read', 'computed', 'from memory']).toContain(label)
    expect(tolerance).toBeGreaterThanOrEqual(0)
    expect(reason).not.toBe('')
  })
})
