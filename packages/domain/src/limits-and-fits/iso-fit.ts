import { DomainError } from '../errors.ts'
import { add, nanometresOf, NANOMETRES_PER_MILLIMETRE, subtract, type Nanometres } from '../exact/length.ts'
import { parseLength } from '../exact/parse-length.ts'
import {
  lettersBelowNominal, shaftDeviation, shaftLetters, type ShaftLetter,
} from './fundamental-deviations.ts'
import { fitOf, mirrored, type Deviations, type Fit } from './size-limits.ts'
import { standardTolerance } from './tolerance-grades.ts'

const halfway = (tolerance: Nanometres): Deviations =>
  ({ lower: nanometresOf(0 - tolerance / 2), upper: nanometresOf(tolerance / 2) })

/**
 * Deviations of a shaft class such as g6, ISO 286-1.
 * @throws DomainError `value-out-of-range` outside the tables
 * @formula shaft-class
 */
export function shaftClass(nominal: Nanometres, letter: ShaftLetter, grade: number): Deviations {
  const tolerance = standardTolerance(nominal, grade)
  if (letter === 'js') return halfway(tolerance)
  const fundamental = shaftDeviation(nominal, letter, grade)
  return lettersBelowNominal.includes(letter)
    ? { lower: subtract(fundamental, tolerance), upper: fundamental }
    : { lower: fundamental, upper: add(fundamental, tolerance) }
}

/**
 * Deviations of a hole class such as H7, from the shaft's of the same letter (ISO 286-1, general and special
 * rule): C to H mirror the shaft. K to N up to IT8 and P to U up to IT7 are mirrored and raised by IT(n) −
 * IT(n−1), so that H7/p6 and P7/h6 are the same fit; sizes up to 3 mm are not raised, and N from IT9 lies on
 * the nominal size. M6 over 250 to 315 mm begins 2 µm nearer to it than the rule says.
 * @throws DomainError `value-out-of-range` outside the tables, or for K above IT8, which is not defined
 * @formula hole-class
 */
export function holeClass(nominal: Nanometres, letter: ShaftLetter, grade: number): Deviations {
  const tolerance = standardTolerance(nominal, grade)
  if (letter === 'js') return halfway(tolerance)
  if (lettersBelowNominal.includes(letter)) return mirrored(shaftClass(nominal, letter, grade))
  const isSmall = nominal <= 3 * NANOMETRES_PER_MILLIMETRE
  if (letter === 'k' && grade > 8 && !isSmall) {
    throw new DomainError('value-out-of-range', 'A hole K is defined up to grade IT8.')
  }
  const upper = letter === 'n' && grade > 8 && !isSmall
    ? nanometresOf(0)
    : subtract(raise(nominal, letter, grade), shaftDeviation(nominal, letter, gradeOfTable(letter, grade)))
  const eased = isEasedM6(nominal, letter, grade) ? add(upper, nanometresOf(2_000)) : upper
  return { lower: subtract(eased, tolerance), upper: eased }
}

/** The one exception that the standard prints beside its rule (from memory). */
function isEasedM6(nominal: Nanometres, letter: ShaftLetter, grade: number): boolean {
  return letter === 'm' && grade === 6
    && nominal > 250 * NANOMETRES_PER_MILLIMETRE && nominal <= 315 * NANOMETRES_PER_MILLIMETRE
}

/** k of the table counts for every grade in which a hole K is raised. */
function gradeOfTable(letter: ShaftLetter, grade: number): number {
  return letter === 'k' && grade <= 8 ? 7 : grade
}

function raise(nominal: Nanometres, letter: ShaftLetter, grade: number): Nanometres {
  const lastRaised = letter === 'k' || letter === 'm' || letter === 'n' ? 8 : 7
  if (grade < 3 || grade > lastRaised || nominal <= 3 * NANOMETRES_PER_MILLIMETRE) return nanometresOf(0)
  return subtract(standardTolerance(nominal, grade), standardTolerance(nominal, grade - 1))
}

const named = /^(.+?)\s*(JS|[A-Z])(\d{1,2})\s*\/\s*(js|[a-z])(\d{1,2})$/

/**
 * A fit by its name: `50 H7/p6`, the nominal size in millimetres.
 * @throws DomainError `number-unreadable` for text that names no fit, `value-out-of-range` outside the tables
 */
export function isoFit(name: string): Fit {
  const match = named.exec(name.trim())
  const [, size = '', holeLetter = '', holeGrade = '', shaftLetter = '', shaftGrade = ''] = match ?? []
  const hole = letterOf(holeLetter.toLowerCase())
  const shaft = letterOf(shaftLetter)
  if (match === null || hole === null || shaft === null) {
    throw new DomainError('number-unreadable', `“${name.trim().slice(0, 24)}” names no fit. Type one such as 50 H7/p6.`)
  }
  const nominal = parseLength(size, 'millimetre')
  return fitOf(
    name.trim(), nominal,
    holeClass(nominal, hole, Number(holeGrade)), shaftClass(nominal, shaft, Number(shaftGrade)),
    'ISO 286-1',
  )
}

function letterOf(text: string): ShaftLetter | null {
  return shaftLetters.find((letter) => letter === text) ?? null
}
