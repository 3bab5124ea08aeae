import { DomainError } from '../errors.ts'
import { NANOMETRES_PER_MILLIMETRE, nanometresOf, type Nanometres } from '../exact/length.ts'

/** Upper ends of the size steps in mm: “over 3 up to and including 6” is the second. */
const stepEnds = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500] as const

/**
 * ISO 286-1 standard tolerances IT1 to IT18 in tenths of a micron, one row for each size step. Read in public
 * repositories that carry the table, to 250 mm in one (IT6 to IT9 in a second), over it in another (IT5 to IT8 in a
 * second); the standard itself was not read.
 */
const tolerances: readonly (readonly number[])[] = [
  [8, 12, 20, 30, 40, 60, 100, 140, 250, 400, 600, 1000, 1400, 2500, 4000, 6000, 10000, 14000],
  [10, 15, 25, 40, 50, 80, 120, 180, 300, 480, 750, 1200, 1800, 3000, 4800, 7500, 12000, 18000],
  [10, 15, 25, 40, 60, 90, 150, 220, 360, 580, 900, 1500, 2200, 3600, 5800, 9000, 15000, 22000],
  [12, 20, 30, 50, 80, 110, 180, 270, 430, 700, 1100, 1800, 2700, 4300, 7000, 11000, 18000, 27000],
  [15, 25, 40, 60, 90, 130, 210, 330, 520, 840, 1300, 2100, 3300, 5200, 8400, 13000, 21000, 33000],
  [15, 25, 40, 70, 110, 160, 250, 390, 620, 1000, 1600, 2500, 3900, 6200, 10000, 16000, 25000, 39000],
  [20, 30, 50, 80, 130, 190, 300, 460, 740, 1200, 1900, 3000, 4600, 7400, 12000, 19000, 30000, 46000],
  [25, 40, 60, 100, 150, 220, 350, 540, 870, 1400, 2200, 3500, 5400, 8700, 14000, 22000, 35000, 54000],
  [35, 50, 80, 120, 180, 250, 400, 630, 1000, 1600, 2500, 4000, 6300, 10000, 16000, 25000, 40000, 63000],
  [45, 70, 100, 140, 200, 290, 460, 720, 1150, 1850, 2900, 4600, 7200, 11500, 18500, 29000, 46000, 72000],
  [60, 80, 120, 160, 230, 320, 520, 810, 1300, 2100, 3200, 5200, 8100, 13000, 21000, 32000, 52000, 81000],
  [70, 90, 130, 180, 250, 360, 570, 890, 1400, 2300, 3600, 5700, 8900, 14000, 23000, 36000, 57000, 89000],
  [80, 100, 150, 200, 270, 400, 630, 970, 1550, 2500, 4000, 6300, 9700, 15500, 25000, 40000, 63000, 97000],
]

/**
 * The standard tolerance of a grade, ISO 286-1.
 * @param nominal over 0 to 500 mm
 * @param grade 1 to 18
 * @throws DomainError `value-out-of-range` outside the table
 * @formula tolerance-grade
 */
export function standardTolerance(nominal: Nanometres, grade: number): Nanometres {
  const row = tolerances[sizeStepOf(nominal, stepEnds)]
  const tenthsOfMicron = row?.[grade - 1]
  if (tenthsOfMicron === undefined) {
    throw new DomainError('value-out-of-range', `There is no tolerance grade IT${grade}: grades run from IT1 to IT18.`)
  }
  return nanometresOf(tenthsOfMicron * 100)
}

/**
 * Which size step a nominal size falls in: “over … up to and including …”.
 * @param ends upper ends of the steps in mm, rising
 * @throws DomainError `value-out-of-range` for nothing, less, or more than the last end
 */
export function sizeStepOf(nominal: Nanometres, ends: readonly number[]): number {
  const step = ends.findIndex((end) => nominal <= end * NANOMETRES_PER_MILLIMETRE)
  if (nominal <= 0 || step === -1) {
    throw new DomainError('value-out-of-range', `Fits are tabled for sizes over 0 up to ${ends.at(-1)} mm.`)
  }
  return step
}
