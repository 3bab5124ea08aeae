import { DomainError } from '../errors.ts'
import { NANOMETRES_PER_INCH, nanometresOf, type Nanometres } from '../exact/length.ts'
import { fitOf, type Fit } from './size-limits.ts'

/**
 * Upper deviation of the hole, then lower and upper of the shaft, in hundred-thousandths of an inch; the hole
 * begins at the nominal size.
 */
type Row = readonly [hole: number, shaftLower: number, shaftUpper: number]

/** One size step of a table: over … to … inches, in hundredths of an inch, and its classes. */
interface Step {
  readonly over: number
  readonly to: number
  readonly classes: Readonly<Record<string, Row>>
}

/** ASME B4.1 running fits, read in Machinery's Handbook, 31st edition, pp. 718–719, table 8a (two steps). */
const running: readonly Step[] = [
  { over: 71, to: 119, classes: { RC1: [40, -55, -30], RC2: [50, -70, -30], RC3: [80, -130, -80], RC4: [120, -160, -80] } },
  { over: 119, to: 197, classes: { RC1: [40, -70, -40], RC2: [60, -80, -40], RC3: [100, -160, -100], RC4: [160, -200, -100] } },
]

/** ASME B4.1 force fits, read in Machinery's Handbook, 27th edition, p. 663, table 11 (five steps). */
const force: readonly Step[] = [
  { over: 71, to: 95, classes: { FN1: [50, 70, 110], FN2: [80, 140, 190], FN4: [80, 160, 210], FN5: [120, 220, 300] } },
  {
    over: 95, to: 119,
    classes: { FN1: [50, 80, 120], FN2: [80, 140, 190], FN3: [80, 160, 210], FN4: [80, 180, 230], FN5: [120, 250, 330] },
  },
  {
    over: 119, to: 158,
    classes: { FN1: [60, 90, 130], FN2: [100, 180, 240], FN3: [100, 200, 260], FN4: [100, 250, 310], FN5: [160, 300, 400] },
  },
  {
    over: 158, to: 197,
    classes: { FN1: [60, 100, 140], FN2: [100, 180, 240], FN3: [100, 220, 280], FN4: [100, 280, 340], FN5: [160, 400, 500] },
  },
  {
    over: 256, to: 315,
    classes: { FN1: [70, 140, 190], FN2: [120, 220, 290], FN3: [120, 300, 370], FN4: [120, 400, 470], FN5: [180, 600, 720] },
  },
]

export const inchFitClasses = ['RC1', 'RC2', 'RC3', 'RC4', 'FN1', 'FN2', 'FN3', 'FN4', 'FN5'] as const
export type InchFitClass = (typeof inchFitClasses)[number]

/**
 * An inch fit by its class, ASME B4.1. RC from 0.71 to 1.97 in; FN from 0.71 to 1.97 and 2.56 to 3.15 in.
 * @throws DomainError `value-out-of-range` for a size or class that the table here does not hold
 * @formula inch-fit
 */
export function inchFit(nominal: Nanometres, name: InchFitClass): Fit {
  const table = name.startsWith('RC') ? running : force
  const step = table.find(({ over, to }) => nominal > hundredths(over) && nominal <= hundredths(to))
  const row = step?.classes[name]
  if (row === undefined) {
    throw new DomainError('value-out-of-range', `No ${name} fit is tabled here for this size.`)
  }
  const [hole, lower, upper] = row.map((fine) => nanometresOf(fine * 254)) as [Nanometres, Nanometres, Nanometres]
  return fitOf(name, nominal, { lower: nanometresOf(0), upper: hole }, { lower, upper }, 'ASME B4.1')
}

function hundredths(of: number): number {
  return of * (NANOMETRES_PER_INCH / 100)
}
