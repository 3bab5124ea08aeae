import { describe, expect, it } from 'vitest'
import { nanometresOf, shaftClass, standardTolerance } from '../../packages/domain/src/index.ts'
import { shaftDeviations } from './tables/shaft-deviations.ts'
import { toleranceGrades } from './tables/tolerance-grades.ts'

const millimetres = (size: number) => nanometresOf(size * 1_000_000)

describe(`${toleranceGrades.title} (${toleranceGrades.source}), tolerance 0`, () => {
  it.each(toleranceGrades.values)('$size mm, IT$grade is $tolerance µm', ({ size, grade, tolerance }) => {
    expect(standardTolerance(millimetres(size), grade)).toBe(tolerance * 1_000)
  })
  it('a step begins just over the end of the one before', () => {
    const ends = [...new Set(toleranceGrades.values.map(({ size }) => size))]
    for (const [index, end] of ends.slice(0, -1).entries()) {
      const next = millimetres(ends[index + 1] ?? Number.NaN)
      expect(standardTolerance(nanometresOf(millimetres(end) + 1), 7)).toBe(standardTolerance(next, 7))
    }
  })
})

describe(`${shaftDeviations.title} (${shaftDeviations.source}), tolerance 0`, () => {
  it.each(shaftDeviations.values)('$letter at $size mm: $end deviation $deviation µm', ({ letter, end, size, deviation }) => {
    expect(shaftClass(millimetres(size), letter, 6)[end]).toBe(deviation * 1_000)
  })
})
