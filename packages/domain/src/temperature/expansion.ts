import { DomainError } from '../errors.ts'
import { figure } from '../in-range.ts'

/** The reference temperature of all sizes (ISO 1), in thousandths of a °C. */
export const REFERENCE_TEMPERATURE = 20_000

/**
 * Below and above, nobody measures an engine part; the linear law would still hold, the typed figure hardly.
 */
const measurable = { from: -40_000, to: 250_000 } as const

/**
 * The size at 20 °C of what was measured warm or cold: L20 = LT / (1 + α(T − 20 °C)). A real number of the
 * length's unit; the caller rounds, once.
 * @param temperature thousandths of a °C
 * @param expansion 10⁻⁹ per °C
 * @throws DomainError `value-out-of-range` outside −40 to 250 °C
 * @formula size-at-reference
 */
export function sizeAtReference(measured: number, temperature: number, expansion: number): number {
  return figure(measured, 'measured') / (1 + strain(temperature, expansion))
}

/**
 * The size at another temperature of what has its size at 20 °C: the inverse of sizeAtReference.
 * @formula size-at-reference
 */
export function sizeAtTemperature(sizeAt20: number, temperature: number, expansion: number): number {
  return figure(sizeAt20, 'sizeAt20') * (1 + strain(temperature, expansion))
}

/** A body and how warm it is. */
export interface WarmBody {
  readonly temperature: number
  readonly expansion: number
}

/**
 * What a comparison of a part with a gauge reads too large, in the length's unit: L[αp(Tp − 20) − αg(Tg −
 * 20)]. Part and gauge of one material at one temperature read true at any.
 * @formula comparison-error
 */
export function comparisonError(length: number, part: WarmBody, gauge: WarmBody): number {
  return figure(length, 'length') * (strain(part.temperature, part.expansion) - strain(gauge.temperature, gauge.expansion))
}

function strain(temperature: number, expansion: number): number {
  if (!(temperature >= measurable.from && temperature <= measurable.to)) {
    throw new DomainError('value-out-of-range', 'A part is measured between −40 and 250 °C.')
  }
  if (!(expansion >= 0 && expansion < 1e6)) {
    throw new DomainError('value-out-of-range', `${expansion} is no expansion in 10⁻⁹ per °C.`)
  }
  // thousandths of a degree times 10⁻⁹
  return ((temperature - REFERENCE_TEMPERATURE) * expansion) / 1e12
}
