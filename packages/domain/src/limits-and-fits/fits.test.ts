import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { NANOMETRES_PER_INCH, nanometresOf } from '../exact/length.ts'
import { shaftLetters } from './fundamental-deviations.ts'
import { inchFit } from './inch-fit.ts'
import { holeClass, isoFit, shaftClass } from './iso-fit.ts'
import { standardTolerance } from './tolerance-grades.ts'

const size = fc.integer({ min: 3_000_001, max: 500_000_000 }).map(nanometresOf)
const refused = (code: string) => expect.objectContaining({ code })

describe('a fit by its name', () => {
  it('is refused when it names none, or lies outside the tables', () => {
    for (const name of ['', 'H7/g6', '50 H7', '50 h7/p6', '50 H7/P6', '50 Q7/p6', '50 H7/q6']) {
      expect(() => isoFit(name)).toThrow()
    }
    expect(() => isoFit('50 H7')).toThrow(refused('number-unreadable'))
    expect(() => isoFit('x H7/g6')).toThrow(refused('length-unreadable'))
    expect(() => isoFit('501 H7/g6')).toThrow(refused('value-out-of-range'))
    expect(() => isoFit('0 H7/g6')).toThrow(refused('value-out-of-range'))
    expect(() => isoFit('50 H19/g6')).toThrow(refused('value-out-of-range'))
    expect(() => isoFit('50 H0/g6')).toThrow(refused('value-out-of-range'))
    expect(() => isoFit('50 K9/h6')).toThrow(refused('value-out-of-range'))
  })
  it('takes the end of a size step with the step it closes', () => {
    expect(standardTolerance(nanometresOf(50_000_000), 7)).toBe(25_000)
    expect(standardTolerance(nanometresOf(50_000_001), 7)).toBe(30_000)
  })
})

describe('laws of the ISO system', () => {
  it('a class is as wide as its grade, hole and shaft alike', () => {
    fc.assert(fc.property(size, fc.constantFrom(...shaftLetters), fc.integer({ min: 5, max: 8 }), (nominal, letter, grade) => {
      const tolerance = standardTolerance(nominal, grade)
      const shaft = shaftClass(nominal, letter, grade)
      const hole = holeClass(nominal, letter, grade)
      expect(shaft.upper - shaft.lower).toBe(tolerance)
      expect(hole.upper - hole.lower).toBe(tolerance)
    }))
  })
  it('a fit on the hole’s basis is the same on the shaft’s: H7 with a grade 6 shaft, and the letters changed over', () => {
    fc.assert(fc.property(size, fc.constantFrom('f', 'g', 'h', 'k', 'm', 'n', 'p', 'r', 's', 'u'), (nominal, letter) => {
      const text = (nominal / 1_000_000).toFixed(6)
      const onHole = isoFit(`${text} H7/${letter}6`).clearance
      const onShaft = isoFit(`${text} ${letter.toUpperCase()}7/h6`).clearance
      expect(onShaft.least).toBe(onHole.least)
      expect(onShaft.greatest).toBe(onHole.greatest)
    }))
  })
  it('grades and steps only grow', () => {
    fc.assert(fc.property(size, fc.integer({ min: 1, max: 17 }), (nominal, grade) => {
      expect(standardTolerance(nominal, grade + 1)).toBeGreaterThan(standardTolerance(nominal, grade))
    }))
  })
  it('js lies evenly about the nominal size', () => {
    const { lower, upper } = shaftClass(nanometresOf(25_000_000), 'js', 6)
    expect([lower, upper]).toEqual([-6_500, 6_500])
  })
})

describe('an inch fit', () => {
  it('is refused where the table here has no row', () => {
    const inches = (value: number) => nanometresOf(value * NANOMETRES_PER_INCH)
    expect(() => inchFit(inches(16), 'RC1')).toThrow(refused('value-out-of-range'))
    expect(() => inchFit(inches(7.5), 'FN1')).toThrow(refused('value-out-of-range'))
    expect(() => inchFit(nanometresOf(0.75 * NANOMETRES_PER_INCH), 'FN3')).toThrow(refused('value-out-of-range'))
    expect(inchFit(inches(1), 'FN3').character).toBe('interference')
  })
})
