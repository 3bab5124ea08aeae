import type { FeatureIndex } from '../features/feature-index.ts'
import { meanOf } from '../measuring/form.ts'
import type { Measurements } from '../measuring/pass.ts'
import { rootSumSquare } from '../measuring/uncertainty.ts'
import { countedPass, type CountedPass } from './counted-pass.ts'
import { feelersSayNoSize, sizeUnknown } from './feature-value.ts'
import type { Measurand } from './requirement.ts'
import { joinUnmeasured, type Unmeasured, type Value } from './value.ts'

/**
 * How far one part stands over the least of its set, or under the greatest: nothing for the part that is it. The whole set
 * must be measured, because any part of it may be the least. The value carries the uncertainty of both readings.
 * @formula set-matching
 */
export function apartValue(
  { feature, set, from }: Extract<Measurand, { kind: 'apart' }>,
  measurements: Measurements,
  features: FeatureIndex,
): Value {
  const own = sizedPass(countedPass(feature, measurements, features))
  const others = set.map((one) => sizedPass(countedPass(one, measurements, features)))
  const gaps = [own, ...others].filter((one): one is Unmeasured => one.kind === 'not-measured')
  if (own.kind === 'not-measured' || gaps.length > 0) return joinUnmeasured(gaps)

  const sign = from === 'least' ? 1 : -1
  const height = ({ values }: CountedPass) => sign * meanOf(values)
  const counted = others.filter((one) => one.kind === 'counted')
  const extreme = counted.reduce((lowest, one) => (height(one) < height(lowest) ? one : lowest), own)
  const value = height(own) - height(extreme)
  return {
    kind: 'measured', least: value, greatest: value,
    standardUncertainty: rootSumSquare(own.pass.standardUncertainty, extreme.pass.standardUncertainty),
    readings: [...new Set([...own.readings, ...counted.flatMap(({ readings }) => readings)])],
  }
}

function sizedPass(counted: CountedPass | Unmeasured): CountedPass | Unmeasured {
  if (counted.kind === 'not-measured') return counted
  if (counted.pass.setOn !== null) return sizeUnknown(counted)
  return counted.blades === null ? counted : feelersSayNoSize(counted)
}
