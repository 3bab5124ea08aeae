import { block, isIn, type Doubt } from './doubt.ts'

/**
 * Bands of value over nominal that give a slip away. The shop sets them; these are starter numbers, from
 * memory.
 */
export interface MagnitudeNumbers {
  /** An inch typed as millimetres or the reverse: 25.4, give or take what wear and oversize can do. */
  readonly unitRatio: readonly [number, number]
  /** The decimal point in the wrong place, by one, two or three figures. */
  readonly decimalRatios: readonly (readonly [number, number])[]
}

export const starterMagnitudeNumbers: MagnitudeNumbers = {
  unitRatio: [24.9, 25.9],
  decimalRatios: [[9.5, 10.5], [95, 105], [950, 1_050]],
}

/**
 * Whether a size was typed in the wrong unit or with its decimal point displaced.
 * @param value and nominal in the same base unit; null where no nominal can be named, and then nothing is
 *   said
 */
export function checkMagnitude(
  value: number,
  nominal: number | null,
  numbers: MagnitudeNumbers = starterMagnitudeNumbers,
): Doubt | null {
  if (nominal === null || nominal === 0 || value === 0) return null
  const ratio = Math.abs(value / nominal)
  const factor = ratio < 1 ? 1 / ratio : ratio
  const direction = ratio < 1 ? 'smaller' : 'larger'
  if (isIn(factor, numbers.unitRatio)) {
    return block(
      'unit', `This is about 25.4 times ${direction} than the nominal size: inches and millimetres mixed up?`,
    )
  }
  if (numbers.decimalRatios.some((band) => isIn(factor, band))) {
    return block(
      'decimal-place',
      `This is about ${powerOfTen(factor)} times ${direction} than the nominal size: `
        + 'is the decimal point in its place?',
    )
  }
  return null
}

function powerOfTen(factor: number): string {
  if (factor < 30) return '10'
  return factor < 300 ? '100' : '1000'
}
