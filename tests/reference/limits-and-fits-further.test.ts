import { describe, expect, it } from 'vitest'
import {
  holeClass, inchFit, isoFit, NANOMETRES_PER_INCH, nanometresOf, parseLength, shaftClass, standardTolerance,
  type InchFitClass, type ShaftLetter,
} from '../../packages/domain/src/index.ts'

const microns = (nanometres: number) => nanometres / 1_000
const millimetres = (size: number) => nanometresOf(size * 1_000_000)
const refused = expect.objectContaining({ code: 'value-out-of-range' })

describe('ISO 286-1 standard tolerances over 250 mm in microns (read in a public repository that carries IT1 to IT18; IT5 to IT8 in a second), tolerance 0', () => {
  it.each([
    [315, [6, 8, 12, 16, 23, 32, 52, 81, 130, 210, 320, 520, 810, 1_300, 2_100, 3_200, 5_200, 8_100]],
    [400, [7, 9, 13, 18, 25, 36, 57, 89, 140, 230, 360, 570, 890, 1_400, 2_300, 3_600, 5_700, 8_900]],
    [500, [8, 10, 15, 20, 27, 40, 63, 97, 155, 250, 400, 630, 970, 1_550, 2_500, 4_000, 6_300, 9_700]],
  ])('to %d mm', (end, row) => {
    expect(row.map((_, index) => microns(standardTolerance(millimetres(end), index + 1)))).toEqual(row)
  })
  it('over 500 mm is refused: those steps are not held', () => {
    expect(() => standardTolerance(nanometresOf(500_000_001), 7)).toThrow(refused)
  })
})

describe('ISO 286-1 fundamental deviations of shafts in microns (read in several public repositories that agree), tolerance 0', () => {
  const ends = [3, 6, 10, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500]
  it.each([
    ['c', 'upper', 0, [-60, -70, -80, -95, -110, -110, -120, -130, -140, -150, -170, -180, -200, -210, -230, -240, -260, -280, -300, -330, -360, -400, -440, -480]],
    ['d', 'upper', 0, [-20, -30, -40, -50, -65, -65, -80, -80, -100, -100, -120, -120, -145, -145, -145, -170, -170, -170, -190, -190, -210, -210, -230, -230]],
    ['e', 'upper', 0, [-14, -20, -25, -32, -40, -40, -50, -50, -60, -60, -72, -72, -85, -85, -85, -100, -100, -100, -110, -110, -125, -125, -135, -135]],
    ['f', 'upper', 18, [-56, -56, -62, -62, -68, -68]], ['g', 'upper', 18, [-17, -17, -18, -18, -20, -20]],
    ['k', 'lower', 18, [4, 4, 4, 4, 5, 5]], ['m', 'lower', 18, [20, 20, 21, 21, 23, 23]],
    ['n', 'lower', 18, [34, 34, 37, 37, 40, 40]], ['p', 'lower', 18, [56, 56, 62, 62, 68, 68]],
    ['r', 'lower', 18, [94, 98, 108, 114, 126, 132]], ['s', 'lower', 18, [158, 170, 190, 208, 232, 252]],
    ['u', 'lower', 0, [18, 23, 28, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315, 350, 390, 435, 490, 540]],
  ] as const)('%s, its %s deviation from step %d on', (letter: ShaftLetter, end, first, row) => {
    expect(ends.slice(first).map((size) => microns(shaftClass(millimetres(size), letter, 6)[end]))).toEqual(row)
  })
})

describe('preferred ISO fits by name, clearance in microns (limits of ISO 286-2 as textbooks print them, from memory), tolerance 0', () => {
  it.each([
    ['6 H7/f7', 10, 34], ['6 H7/g6', 4, 24], ['10 H7/h6', 0, 24], ['16 H11/c11', 95, 315], ['20 H9/d9', 65, 169],
    ['20 H8/f7', 20, 74], ['40 H7/n6', -33, 8], ['40 H7/k6', -18, 23], ['60 H7/s6', -72, -23], ['80 H7/u6', -121, -72],
    ['100 H7/s6', -93, -36], ['120 H7/m6', -35, 22], ['200 H8/e8', 100, 244], ['160 H7/r6', -90, -25], ['30 H7/js6', -6.5, 27.5],
    ['300 H7/g6', 17, 101], ['400 H7/p6', -98, -5], ['500 H11/c11', 480, 1_280],
    ['25 G7/h6', 7, 41], ['25 F8/h7', 20, 74], ['50 K7/h6', -18, 23], ['50 N7/h6', -33, 8], ['50 P7/h6', -42, -1],
    ['80 S7/h6', -78, -29], ['10 M7/h6', -15, 9],
  ])('%s: %f to %f', (name, least, greatest) => {
    const { clearance } = isoFit(name)
    expect([microns(clearance.least), microns(clearance.greatest)]).toEqual([least, greatest])
  })
  it('M6 over 250 to 315 mm is −41 to −9, the one exception that the table prints (from memory)', () => {
    const { lower, upper } = holeClass(millimetres(300), 'm', 6)
    expect([microns(lower), microns(upper)]).toEqual([-41, -9])
    expect(microns(holeClass(millimetres(250), 'm', 6).upper)).toBe(-8)
    expect(microns(holeClass(millimetres(400), 'm', 6).upper)).toBe(-10)
  })
})

const nominal = (inches: number) => nanometresOf(inches * NANOMETRES_PER_INCH)
type Printed = readonly [size: number, name: InchFitClass, least: string, greatest: string]

/** Read in Machinery’s Handbook, 31st edition, tables 8a and 8b: the clearance column, one size in each step. */
const running: readonly Printed[] = [
  [0.1, 'RC1', '0.1', '0.45'], [0.2, 'RC1', '0.15', '0.5'], [0.3, 'RC2', '0.2', '0.85'], [0.5, 'RC3', '0.6', '1.7'],
  [2.5, 'RC1', '0.4', '1.2'], [2.5, 'RC4', '1.2', '4.2'], [4, 'RC1', '0.5', '1.5'], [4, 'RC2', '0.5', '2.0'],
  [4, 'RC3', '1.4', '3.7'], [4, 'RC4', '1.4', '5.0'], [6, 'RC4', '1.6', '5.7'], [8, 'RC3', '2.0', '5.0'],
  [11, 'RC2', '0.8', '2.9'], [14, 'RC1', '1.0', '2.7'], [14, 'RC4', '3.0', '8.7'],
  [0.1, 'RC5', '0.6', '1.6'], [0.2, 'RC6', '0.8', '2.7'], [0.3, 'RC7', '1.6', '3.9'], [0.5, 'RC8', '3.5', '7.9'],
  [1, 'RC5', '1.6', '3.6'], [1, 'RC6', '1.6', '4.8'], [1, 'RC7', '2.5', '5.7'], [1, 'RC9', '7.0', '15.5'],
  [1.5, 'RC5', '2.0', '4.6'], [1.5, 'RC9', '8.0', '18.0'], [2.5, 'RC6', '2.5', '7.3'], [2.5, 'RC7', '4.0', '8.8'],
  [4, 'RC5', '3.0', '6.6'], [4, 'RC6', '3.0', '8.7'], [6, 'RC9', '12.0', '28.0'], [14, 'RC9', '22.0', '45.0'],
]
describe('ASME B4.1 running fits (Machinery’s Handbook 31, tables 8a and 8b; columns re-paired), tolerance 0', () => {
  it.each(running)('%f in %s has %s to %s thousandths of clearance', (size, name, least, greatest) => {
    const { clearance } = inchFit(nominal(size), name)
    expect(clearance).toEqual({ least: parseLength(least, 'thousandth'), greatest: parseLength(greatest, 'thousandth') })
  })
  it('a sleeve of 2.000 in with RC5 has hole 2.0000 to 2.0018 and shaft 1.9963 to 1.9975 in (hole read in 8a, shaft in 8b)', () => {
    const { hole, shaft } = inchFit(nominal(2), 'RC5')
    expect([hole.least, hole.greatest, shaft.least, shaft.greatest])
      .toEqual(['2.0000', '2.0018', '1.9963', '1.9975'].map((size) => parseLength(size, 'inch')))
  })
})

/** Read in the 27th edition, p. 663, to 3.94 in, and in the 31st, p. 731, over 4.73 in; 4 in from memory. */
const force: readonly Printed[] = [
  [0.1, 'FN1', '0.05', '0.5'], [0.1, 'FN2', '0.2', '0.85'], [0.2, 'FN4', '0.4', '1.2'], [0.3, 'FN5', '0.5', '2.0'],
  [0.5, 'FN2', '0.5', '1.6'], [0.6, 'FN5', '0.8', '2.5'], [2, 'FN1', '0.6', '1.8'], [2, 'FN2', '0.8', '2.7'],
  [2, 'FN3', '1.3', '3.2'], [2, 'FN4', '2.3', '4.2'], [2, 'FN5', '3.2', '6.2'], [3.5, 'FN1', '0.9', '2.4'],
  [3.5, 'FN2', '1.4', '3.7'], [3.5, 'FN3', '2.1', '4.4'], [3.5, 'FN4', '3.6', '5.9'], [3.5, 'FN5', '4.8', '8.4'],
  [4, 'FN1', '1.1', '2.6'], [4, 'FN2', '1.6', '3.9'], [5, 'FN1', '1.2', '2.9'], [5, 'FN2', '1.9', '4.5'],
  [5, 'FN3', '3.4', '6.0'], [5, 'FN5', '7.5', '11.6'], [6, 'FN2', '2.4', '5.0'], [7, 'FN4', '6.4', '9.0'], [7, 'FN5', '9.5', '13.6'],
]
describe('ASME B4.1 force fits (Machinery’s Handbook 27 and 31, table 11), tolerance 0', () => {
  it.each(force)('%f in %s has %s to %s thousandths of interference', (size, name, least, greatest) => {
    const { clearance } = inchFit(nominal(size), name)
    expect(clearance).toEqual({
      least: parseLength(`-${greatest}`, 'thousandth'), greatest: parseLength(`-${least}`, 'thousandth'),
    })
  })
  it('of a class or size that is not held is refused: LC, LT, LN, FN3 to 0.95 in, FN over 7.09 in', () => {
    for (const name of ['LC1', 'LT3', 'LN2']) expect(() => inchFit(nominal(1), name as InchFitClass)).toThrow(refused)
    expect(() => inchFit(nominal(0.95), 'FN3')).toThrow(refused)
    expect(() => inchFit(nominal(7.1), 'FN1')).toThrow(refused)
  })
})
