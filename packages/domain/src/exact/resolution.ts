import { DomainError } from '../errors.ts'
import { formatLength } from './format-length.ts'
import type { Nanometres } from './length.ts'
import { NANOMETRES_PER_TENTH } from './length.ts'

/** What a gauge can show: one division of a dial or thimble, or one step of the last digit, in nanometres. */
export interface GaugeResolution {
  readonly display: 'analogue' | 'digital'
  readonly division: Nanometres
}

/**
 * The smallest step that can be read honestly, in nanometres: half a division by eye, one step of a digital
 * display. A dial division may be an odd number of nanometres, so this need not be whole.
 */
export function readableStep(gauge: GaugeResolution): number {
  return gauge.display === 'analogue' ? gauge.division / 2 : gauge.division
}

/**
 * Refuses a reading finer than its gauge can show. For a comparator pass the deviation, not the size.
 * @throws DomainError `length-too-fine`
 */
export function checkResolution(value: Nanometres, gauge: GaugeResolution): void {
  const steps = gauge.display === 'analogue' ? 2 * value : value
  if (steps % gauge.division === 0) return
  const inInches = gauge.division % (NANOMETRES_PER_TENTH / 10) === 0
  const format = inInches
    ? ({ unit: 'inch', step: 254 } as const)
    : ({ unit: 'millimetre', step: 1 } as const)
  const shown = formatLength(gauge.division, format, 'half-even').replace(/(\.\d*?)0+$/, '$1')
  const unit = inInches ? 'in' : 'mm'
  throw new DomainError(
    'length-too-fine',
    gauge.display === 'analogue'
      ? `This gauge has divisions of ${shown} ${unit}: half a division is the finest that can be read on it.`
      : `This gauge counts in steps of ${shown} ${unit}: it cannot show a figure between two of them.`,
  )
}
