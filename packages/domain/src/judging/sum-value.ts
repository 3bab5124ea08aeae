import { round } from '../exact/rounding.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import type { Measurements } from '../measuring/pass.ts'
import { rootSumSquare } from '../measuring/uncertainty.ts'
import { countedPass } from './counted-pass.ts'
import { correctionOf, feelersSayNoSize, sizeBy, sizeUnknown } from './feature-value.ts'
import type { Measurand } from './requirement.ts'
import { joinUnmeasured, type CorrectedFeature, type Unmeasured, type Value } from './value.ts'

/**
 * A constant and features each times a factor, such as deck clearance. One value, rounded once to a whole
 * base unit (half to even) where a factor is no whole number; uncertainties add as |factor|·u, root of the
 * sum of squares.
 * @formula sum-of-terms
 */
export function sumValue(
  { constant, terms }: Extract<Measurand, { kind: 'sum' }>,
  measurements: Measurements,
  features: FeatureIndex,
): Value {
  const gaps: Unmeasured[] = []
  const uncertainties: number[] = []
  const readings: string[] = []
  const corrected: CorrectedFeature[] = []
  let sum = constant
  for (const { feature, factor, reducer } of terms) {
    const counted = countedPass(feature, measurements, features)
    if (counted.kind === 'not-measured') {
      gaps.push(counted)
      continue
    }
    const unfit = counted.pass.setOn !== null ? sizeUnknown(counted)
      : counted.blades !== null ? feelersSayNoSize(counted) : null
    if (unfit !== null) {
      gaps.push(unfit)
      continue
    }
    corrected.push(...correctionOf(counted, true).corrected ?? [])
    sum += factor * sizeBy(counted, reducer)
    uncertainties.push(Math.abs(factor) * counted.pass.standardUncertainty)
    readings.push(...counted.readings)
  }
  if (gaps.length > 0) return joinUnmeasured(gaps)
  const value = round(sum, 'half-even')
  return {
    kind: 'measured', least: value, greatest: value,
    standardUncertainty: rootSumSquare(...uncertainties),
    readings,
    ...(corrected.length > 0 && { corrected }),
  }
}
