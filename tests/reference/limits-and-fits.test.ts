import { describe, expect, it } from 'vitest'
import {
  holeClass, inchFit, isoFit, NANOMETRES_PER_INCH, nanometresOf, parseLength, shaftClass, standardTolerance,
  type InchFitClass, type ShaftLetter,
} from '../../packages/domain/src/index.ts'

const microns = (nanometres: number) => nanometres / 1_000

describe('ISO 286-1 standard tolerances in microns (a public repository’s table; IT6 to IT9 in a second), tolerance 0', () => {
  // first and last size of a step, with grades at both ends of the table and in its middle
  it.each([
    [3, 1, 0.8], [3, 7, 10], [3, 18, 1_400], [6, 9, 30], [10, 5, 6], [18, 8, 27], [30, 6, 13], [50, 11, 160],
    [80, 7, 30], [80, 16, 1_900], [120, 4, 10], [180, 12, 400], [250, 1, 4.5], [250, 18, 7_200],
  ])('%d mm, IT%d is %d', (size, grade, tolerance) => {
    expect(microns(standardTolerance(nanometresOf(size * 1_000_000), grade))).toBe(tolerance)
  })
})

describe('ISO 286 fits by name in microns, tolerance 0', () => {
  it.each([
    ['25 H7/g6', [0, 21], [-20, -7], [7, 41], 'Aeronautical Engineer’s Data Book, table 12.6 (BS 4500)'],
    ['25 H8/f7', [0, 33], [-41, -20], [20, 74], 'Aeronautical Engineer’s Data Book, table 12.6 (BS 4500)'],
    ['25 H7/h6', [0, 21], [-13, 0], [0, 34], 'Aeronautical Engineer’s Data Book, table 12.6 (BS 4500)'],
    ['50 H7/g6', [0, 25], [-25, -9], [9, 50], 'rulesofthumb.info, limits and fits'],
    ['50 H7/p6', [0, 25], [26, 42], [-42, -1], 'rulesofthumb.info, limits and fits'],
    ['25 H7/p6', [0, 21], [22, 35], [-35, -1], 'Aeronautical Engineer’s Data Book, table 12.6; result computed'],
    ['25 H7/k6', [0, 21], [2, 15], [-15, 19], 'Aeronautical Engineer’s Data Book, table 12.6; result computed'],
    ['50 H7/s6', [0, 25], [43, 59], [-59, -18], 'a textbook’s example 3.3 (hub of 50 mm, H7-s6) in the FOSSEE Scilab companions'],
  ] as const)('%s: hole %o, shaft %o, clearance %o (%s)', (name, hole, shaft, clearance, _source) => {
    const fit = isoFit(name)
    const from = (size: number) => microns(size - fit.nominal)
    expect([from(fit.hole.least), from(fit.hole.greatest)]).toEqual(hole)
    expect([from(fit.shaft.least), from(fit.shaft.greatest)]).toEqual(shaft)
    expect([microns(fit.clearance.least), microns(fit.clearance.greatest)]).toEqual(clearance)
  })
  it.each([['25 H7/g6', 'clearance'], ['25 H7/k6', 'transition'], ['50 H7/p6', 'interference']])(
    '%s is a %s fit', (name, character) => expect(isoFit(name).character).toBe(character))
})

describe('single classes at 45 mm, in microns (public repository rf-tolerance, its own DIN 286 checks), tolerance 0', () => {
  const size = nanometresOf(45_000_000)
  it.each([['k', 8, 0, 39], ['js', 8, -19.5, 19.5], ['m', 6, 9, 25]] as const)(
    '%s%d runs from %d to %d', (letter: ShaftLetter, grade, lower, upper) => {
      const deviations = shaftClass(size, letter, grade)
      expect([microns(deviations.lower), microns(deviations.upper)]).toEqual([lower, upper])
    })
  it('H7 runs from 0 to 25', () => {
    expect(holeClass(size, 'h', 7)).toEqual({ lower: 0, upper: 25_000 })
  })
})

describe('fundamental deviations in microns (public repository rf-tolerance, its DIN 286 table), tolerance 0', () => {
  it.each([
    ['k', 3, 0], ['k', 65, 2], ['k', 160, 3], ['k', 250, 4], ['m', 6, 4], ['m', 100, 13], ['m', 250, 17], ['n', 10, 10],
    ['n', 80, 20], ['n', 180, 27], ['p', 18, 18], ['p', 100, 37], ['p', 250, 50], ['r', 50, 34], ['r', 65, 41], ['r', 80, 43],
    ['r', 120, 54], ['r', 180, 68], ['r', 250, 84], ['s', 30, 35], ['s', 80, 59], ['s', 120, 79], ['s', 160, 100],
    ['s', 180, 108], ['s', 225, 130], ['s', 250, 140],
  ] as const)('%s at %d mm begins at %d', (letter, size, lower) => {
    expect(microns(shaftClass(nanometresOf(size * 1_000_000), letter, 6).lower)).toBe(lower)
  })
  it.each([['f', 3, -6], ['f', 120, -36], ['g', 180, -14], ['g', 250, -15], ['h', 100, 0]] as const)(
    '%s at %d mm ends at %d (public repository TI-84 ISO-286)', (letter, size, upper) => {
      expect(microns(shaftClass(nanometresOf(size * 1_000_000), letter, 6).upper)).toBe(upper)
    })
})

describe('hole classes by the special rule at 25 and 50 mm, in microns (ISO 286-2, from memory), tolerance 0', () => {
  it.each([
    [25, 'k', 7, -15, 6], [25, 'n', 7, -28, -7], [25, 'p', 7, -35, -14], [25, 's', 7, -48, -27], [50, 'm', 7, -25, 0],
    [50, 'n', 9, -62, 0],
  ] as const)('%d mm %s%d runs from %d to %d', (size, letter, grade, lower, upper) => {
    const deviations = holeClass(nanometresOf(size * 1_000_000), letter, grade)
    expect([microns(deviations.lower), microns(deviations.upper)]).toEqual([lower, upper])
  })
})

/**
 * Clearance as printed (interference for FN), in thousandths of an inch: an identity of each row of the
 * table.
 */
type PrintedRow = readonly [size: number, name: InchFitClass, least: string, greatest: string]

const running: readonly PrintedRow[] = [
  [1, 'RC1', '0.3', '0.95'], [1, 'RC2', '0.3', '1.2'], [1, 'RC3', '0.8', '2.1'], [1, 'RC4', '0.8', '2.8'],
  [1.5, 'RC1', '0.4', '1.1'], [1.5, 'RC2', '0.4', '1.4'], [1.5, 'RC3', '1.0', '2.6'], [1.5, 'RC4', '1.0', '3.6'],
]
const force: readonly PrintedRow[] = [
  [0.9, 'FN1', '0.2', '1.1'], [0.9, 'FN2', '0.6', '1.9'], [0.9, 'FN4', '0.8', '2.1'], [0.9, 'FN5', '1.0', '3.0'],
  [1, 'FN1', '0.3', '1.2'], [1, 'FN2', '0.6', '1.9'], [1, 'FN3', '0.8', '2.1'], [1, 'FN4', '1.0', '2.3'],
  [1, 'FN5', '1.3', '3.3'],
  [1.5, 'FN1', '0.3', '1.3'], [1.5, 'FN2', '0.8', '2.4'], [1.5, 'FN3', '1.0', '2.6'], [1.5, 'FN4', '1.5', '3.1'],
  [1.5, 'FN5', '1.4', '4.0'],
  [1.75, 'FN1', '0.4', '1.4'], [1.75, 'FN2', '0.8', '2.4'], [1.75, 'FN3', '1.2', '2.8'], [1.75, 'FN4', '1.8', '3.4'],
  [1.75, 'FN5', '2.4', '5.0'],
  [3, 'FN1', '0.7', '1.9'], [3, 'FN2', '1.0', '2.9'], [3, 'FN3', '1.8', '3.7'], [3, 'FN4', '2.8', '4.7'],
  [3, 'FN5', '4.2', '7.2'],
]
const nominal = (inches: number) => nanometresOf(inches * NANOMETRES_PER_INCH)

describe('ASME B4.1 running fits (Machinery’s Handbook 31, table 8a; columns re-paired), tolerance 0', () => {
  it.each(running)('%f in %s has %s to %s thousandths of clearance', (size, name, least, greatest) => {
    const { clearance } = inchFit(nominal(size), name)
    expect(clearance).toEqual({ least: parseLength(least, 'thousandth'), greatest: parseLength(greatest, 'thousandth') })
  })
})

describe('ASME B4.1 force fits (Machinery’s Handbook 27, p. 663, table 11), tolerance 0', () => {
  it.each(force)('%f in %s has %s to %s thousandths of interference', (size, name, least, greatest) => {
    const { clearance } = inchFit(nominal(size), name)
    expect(clearance).toEqual({
      least: parseLength(`-${greatest}`, 'thousandth'), greatest: parseLength(`-${least}`, 'thousandth'),
    })
  })
})
