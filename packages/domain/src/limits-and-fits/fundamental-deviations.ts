import { DomainError } from '../errors.ts'
import { nanometresOf, type Nanometres } from '../exact/length.ts'
import { sizeStepOf } from './tolerance-grades.ts'

/** Size steps of the deviations, upper ends in mm; finer than those of the grades from 18 mm on. */
const stepEnds = [
  3, 6, 10, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500,
] as const

/**
 * ISO 286-1 fundamental deviations of shafts in microns: the upper deviation for c to h, the lower one for k
 * to u. Read in several public repositories that carry the tables and agree; the standard itself was not read.
 */
const deviations = {
  c: [
    -60, -70, -80, -95, -110, -110, -120, -130, -140, -150, -170, -180, -200, -210, -230, -240, -260, -280, -300, -330, -360,
    -400, -440, -480,
  ],
  d: [
    -20, -30, -40, -50, -65, -65, -80, -80, -100, -100, -120, -120, -145, -145, -145, -170, -170, -170, -190, -190, -210, -210, -230, -230,
  ],
  e: [
    -14, -20, -25, -32, -40, -40, -50, -50, -60, -60, -72, -72, -85, -85, -85, -100, -100, -100, -110, -110, -125, -125, -135, -135,
  ],
  f: [-6, -10, -13, -16, -20, -20, -25, -25, -30, -30, -36, -36, -43, -43, -43, -50, -50, -50, -56, -56, -62, -62, -68, -68],
  g: [-2, -4, -5, -6, -7, -7, -9, -9, -10, -10, -12, -12, -14, -14, -14, -15, -15, -15, -17, -17, -18, -18, -20, -20],
  h: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  k: [0, 1, 1, 1, 2, 2, 2, 2, 2, 2, 3, 3, 3, 3, 3, 4, 4, 4, 4, 4, 4, 4, 5, 5],
  m: [2, 4, 6, 7, 8, 8, 9, 9, 11, 11, 13, 13, 15, 15, 15, 17, 17, 17, 20, 20, 21, 21, 23, 23],
  n: [4, 8, 10, 12, 15, 15, 17, 17, 20, 20, 23, 23, 27, 27, 27, 31, 31, 31, 34, 34, 37, 37, 40, 40],
  p: [6, 12, 15, 18, 22, 22, 26, 26, 32, 32, 37, 37, 43, 43, 43, 50, 50, 50, 56, 56, 62, 62, 68, 68],
  r: [10, 15, 19, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132],
  s: [14, 19, 23, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252],
  u: [18, 23, 28, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315, 350, 390, 435, 490, 540],
} as const satisfies Record<string, readonly number[]>

type TabledLetter = keyof typeof deviations

/** Letters of shaft deviations that are known here; `js` lies evenly about the nominal size. */
export const shaftLetters = ['c', 'd', 'e', 'f', 'g', 'h', 'js', 'k', 'm', 'n', 'p', 'r', 's', 'u'] as const
export type ShaftLetter = (typeof shaftLetters)[number]

/** Letters whose fundamental deviation is the upper one: the shaft lies on or below the nominal size. */
export const lettersBelowNominal: readonly ShaftLetter[] = ['c', 'd', 'e', 'f', 'g', 'h']

/**
 * The fundamental deviation of a shaft: es for c to h, ei for k to u. k lies on the nominal size itself
 * outside grades IT4 to IT7.
 * @throws DomainError `value-out-of-range` outside 0 to 500 mm
 * @formula shaft-class
 */
export function shaftDeviation(nominal: Nanometres, letter: TabledLetter, grade: number): Nanometres {
  const microns = deviations[letter][sizeStepOf(nominal, stepEnds)]
  if (microns === undefined) {
    throw new DomainError('value-out-of-range', `No deviation ${letter} is tabled for this size.`)
  }
  return nanometresOf(letter === 'k' && (grade < 4 || grade > 7) ? 0 : microns * 1_000)
}
