import type { FeatureReference } from '../features/feature.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import {
  bigEndWeight, pinWeight, pistonWeight, retainersWeight, ringSetWeight, shellsWeight, smallEndWeight,
} from '../features/references.ts'
import { countedPass } from '../judging/counted-pass.ts'
import { sayValue } from '../judging/say-value.ts'
import { meanOf } from '../measuring/form.ts'
import type { Measurements } from '../measuring/pass.ts'
import { bobweight, type RodMasses } from './bobweight.ts'
import type { BobweightRule } from './bobweight-rule.ts'

/** The bobweight of one crankpin as it follows from what is weighed by now, with its formula and the numbers in it. */
export interface BobweightFigure {
  readonly crankpin: number
  readonly cylinders: readonly number[]
  /** Milligrams; null while something is missing. */
  readonly value: number | null
  /** What is missing, in words. */
  readonly missing: readonly string[]
  readonly formula: string
  readonly worked: readonly string[]
  readonly source: string
}

const FORMULA = 'Σ(big end + shells) + oil + factor × Σ(small end + piston + pin + rings + retainers), over the rods of the pin'
const NO_FACTOR = 'The balance factor of this crankshaft: write it with the engine, from its maker.'

/** The bobweight of every crankpin, from the front. A rod counts by its own weights, wherever its parts sit now. */
export function bobweightFigures(
  rule: BobweightRule, measurements: Measurements, features: FeatureIndex,
): readonly BobweightFigure[] {
  return rule.pins.map(({ crankpin, cylinders }) => {
    const missing: string[] = rule.factor === null ? [NO_FACTOR] : []
    const weigh = (reference: FeatureReference): number => {
      const counted = countedPass(reference, measurements, features)
      if (counted.kind === 'counted') return meanOf(counted.values)
      missing.push(features.get(reference.place)?.get(reference.feature)?.title ?? '')
      return 0
    }
    const rods = cylinders.map((cylinder) => rodOf(cylinder, rule, weigh))
    const common = { crankpin, cylinders, missing: [...new Set(missing)], formula: FORMULA, source: rule.source }
    if (missing.length > 0 || rule.factor === null) return { ...common, value: null, worked: [] }
    const value = bobweight(rods, rule.factor, rule.oil)
    return { ...common, value, worked: workedOut(rods, rule.factor, rule.oil, value) }
  })
}

function rodOf(
  cylinder: number, { hasRetainers }: BobweightRule, weigh: (reference: FeatureReference) => number,
): RodMasses {
  return {
    bigEnd: weigh(bigEndWeight(cylinder)),
    shells: weigh(shellsWeight),
    smallEnd: weigh(smallEndWeight(cylinder)),
    piston: weigh(pistonWeight(cylinder)),
    pin: weigh(pinWeight(cylinder)),
    rings: weigh(ringSetWeight),
    retainers: hasRetainers ? weigh(retainersWeight) : 0,
  }
}

const say = (mass: number) => sayValue(mass, 'mass', 'millimetre')

function workedOut(rods: readonly RodMasses[], factor: number, oil: number, value: number): readonly string[] {
  const turning = rods.map(({ bigEnd, shells }) => [bigEnd, shells])
  const sliding = rods.map(({ smallEnd, piston, pin, rings, retainers }) => [smallEnd, piston, pin, rings, retainers])
  const total = (sets: readonly (readonly number[])[]) => sets.flat().reduce((sum, mass) => sum + mass, 0)
  const written = (sets: readonly (readonly number[])[]) =>
    sets.map((set) => `(${set.filter((mass) => mass > 0).map(say).join(' + ')})`).join(' + ')
  return [
    `Turning: ${written(turning)} + oil ${say(oil)} = ${say(total(turning) + oil)}`,
    `Going up and down: ${written(sliding)} = ${say(total(sliding))}`,
    `${say(total(turning) + oil)} + ${factor / 10} % of ${say(total(sliding))} = ${say(value)}`,
  ]
}
