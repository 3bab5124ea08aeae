import { DomainError } from '../errors.ts'
import { nanometresPer, type ReaderUnit } from './length-unit.ts'
import { roundToStep, type RoundingMode } from './rounding.ts'

/** How a length is shown: the reader's unit and the step of the last figure in whole nanometres. */
export interface LengthFormat {
  readonly unit: ReaderUnit
  readonly step: number
}

/** The steps that the trade writes. */
export const lengthFormats = {
  /** 0.0001 in: a size or a clearance. */
  inchTenths: { unit: 'inch', step: 2_540 },
  /** 0.00005 in: a clearance read to half a tenth. */
  inchHalfTenths: { unit: 'inch', step: 1_270 },
  /** 0.00001 in: an uncertainty. */
  inchFine: { unit: 'inch', step: 254 },
  /** 0.001 mm. */
  millimetreMicrons: { unit: 'millimetre', step: 1_000 },
  /** 0.0001 mm: an uncertainty. */
  millimetreFine: { unit: 'millimetre', step: 100 },
} as const satisfies Record<string, LengthFormat>

/** What stands behind a figure. */
export const readerUnitSymbols: Record<ReaderUnit, string> = { inch: 'in', millimetre: 'mm' }

const minus = '−'

/**
 * A length with fixed decimals, as many as its step needs, so that columns align: 7 000 nm to 0.001 mm is
 * `0.007`.
 * @param value nanometres; an uncertainty may have a fraction
 * @throws DomainError `value-out-of-range` for a step that has no finite decimals in the unit
 */
export function formatLength(value: number, format: LengthFormat, mode: RoundingMode): string {
  const perUnit = nanometresPer[format.unit]
  const decimals = decimalsOf(format.step, perUnit)
  const rounded = BigInt(roundToStep(value, format.step, mode))
  const scaled = (rounded * 10n ** BigInt(decimals)) / BigInt(perUnit)
  return fixed(scaled, decimals)
}

/** As formatLength, followed by the unit's symbol. */
export function formatLengthWithUnit(value: number, format: LengthFormat, mode: RoundingMode): string {
  return `${formatLength(value, format, mode)} ${readerUnitSymbols[format.unit]}`
}

/** A whole number of 10^−decimals units, written out with a true minus sign. */
export function fixed(scaled: bigint, decimals: number): string {
  const digits = (scaled < 0n ? -scaled : scaled).toString().padStart(decimals + 1, '0')
  const whole = digits.slice(0, digits.length - decimals)
  const part = decimals === 0 ? '' : `.${digits.slice(-decimals)}`
  return `${scaled < 0n ? minus : ''}${whole}${part}`
}

/**
 * The figure for a sentence: tenths where they tell the whole value, else half tenths, else 0.00001 in;
 * microns likewise, else 0.0001 mm.
 */
export function sayLength(value: number, unit: ReaderUnit): string {
  const formats: readonly LengthFormat[] = unit === 'inch'
    ? [lengthFormats.inchTenths, lengthFormats.inchHalfTenths]
    : [lengthFormats.millimetreMicrons]
  const finest = unit === 'inch' ? lengthFormats.inchFine : lengthFormats.millimetreFine
  const format = formats.find(({ step }) => value % step === 0) ?? finest
  return formatLengthWithUnit(value, format, 'half-even')
}

/** How many figures long division gives before nothing is left over. */
function decimalsOf(step: number, perUnit: number): number {
  if (Number.isSafeInteger(step)) {
    let left = step % perUnit
    for (let decimals = 0; decimals <= 9; decimals += 1) {
      if (left === 0) return decimals
      left = (left * 10) % perUnit
    }
  }
  throw new DomainError('value-out-of-range', `A step of ${step} nm has no finite decimals in this unit.`)
}
