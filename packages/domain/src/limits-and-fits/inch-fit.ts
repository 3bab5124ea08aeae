import { DomainError } from '../errors.ts'
import { NANOMETRES_PER_INCH, nanometresOf, type Nanometres } from '../exact/length.ts'
import { forceFits } from './force-fits.ts'
import { runningFits } from './running-fits.ts'
import { fitOf, type Fit } from './size-limits.ts'

export const inchFitClasses = [
  'RC1', 'RC2', 'RC3', 'RC4', 'RC5', 'RC6', 'RC7', 'RC8', 'RC9', 'FN1', 'FN2', 'FN3', 'FN4', 'FN5',
] as const
export type InchFitClass = (typeof inchFitClasses)[number]

/**
 * An inch fit by its class, ASME B4.1. RC over 0 to 15.75 in, FN over 0 to 7.09 in (FN3 over 0.95 in).
 * @throws DomainError `value-out-of-range` for a size or class that the table here does not hold
 * @formula inch-fit
 */
export function inchFit(nominal: Nanometres, name: InchFitClass): Fit {
  const table = name.startsWith('RC') ? runningFits : forceFits
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
