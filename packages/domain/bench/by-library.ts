import { Decimal } from 'decimal.js'
import Qty from 'js-quantities'
import type { FeatureReference, Reducer } from '../src/index.ts'
import type { MeasuredShortBlock } from './short-block.ts'

/** The arithmetic of one library: what it takes to find a fit's least, greatest and uncertainty and hold them to its limits. */
interface Arithmetic<Value> {
  readonly of: (nanometres: number) => Value
  readonly plus: (one: Value, other: Value) => Value
  readonly less: (one: Value, other: Value) => Value
  readonly times: (one: Value, factor: number) => Value
  readonly isOver: (one: Value, other: Value) => boolean
  readonly rootSumSquare: (one: Value, other: Value) => Value
}

type Quantity = ReturnType<typeof Qty>

/** A general units library: a quantity carries its unit, and every operation looks at it. */
export const unitsLibrary: Arithmetic<Quantity> = {
  of: (nanometres) => Qty(nanometres / 1e6, 'mm'),
  plus: (one, other) => one.add(other),
  less: (one, other) => one.sub(other),
  times: (one, factor) => one.mul(factor),
  isOver: (one, other) => one.gt(other),
  rootSumSquare: (one, other) => Qty(Math.sqrt(one.mul(one).add(other.mul(other)).to('mm2').scalar), 'mm'),
}

/** A decimal library, in millimetres. */
export const decimalLibrary: Arithmetic<Decimal> = {
  of: (nanometres) => new Decimal(nanometres).div(1e6),
  plus: (one, other) => one.plus(other),
  less: (one, other) => one.minus(other),
  times: (one, factor) => one.times(factor),
  isOver: (one, other) => one.gt(other),
  rootSumSquare: (one, other) => one.times(one).plus(other.times(other)).sqrt(),
}

const differences: readonly Reducer[] = ['out-of-round', 'taper', 'range']

/**
 * The sums of the fit sheet in a library's arithmetic, from the same stored readings: each line's least, greatest and
 * expanded uncertainty against its limits. Less than judge does (no probability, form by section, remedy or advice).
 * @returns how many lines are within
 */
export function sumsByLibrary<Value>(block: MeasuredShortBlock, arithmetic: Arithmetic<Value>): number {
  const { of, plus, less, times, isOver, rootSumSquare } = arithmetic
  const extremesOf = (reference: FeatureReference) => {
    const pass = block.measurements.latestPass(reference)
    if (pass === null) throw new Error('The short block must be fully measured.')
    const values = pass.readings.map(({ value }) => of(value))
    let [least, greatest] = [values[0] as Value, values[0] as Value]
    for (const value of values) {
      if (isOver(least, value)) least = value
      if (isOver(value, greatest)) greatest = value
    }
    return { least, greatest, uncertainty: of(pass.standardUncertainty) }
  }
  let within = 0
  for (const { measurand, limits } of block.requirements) {
    if (measurand.kind === 'sum') continue
    let { least, greatest, uncertainty } = extremesOf(measurand.kind === 'feature' ? measurand.feature : measurand.hole)
    if (measurand.kind === 'clearance') {
      const shaft = extremesOf(measurand.shaft)
      ;[least, greatest] = [less(least, shaft.greatest), less(greatest, shaft.least)]
      uncertainty = rootSumSquare(uncertainty, shaft.uncertainty)
    } else if (differences.includes(measurand.reducer)) {
      least = greatest = less(greatest, least)
      uncertainty = rootSumSquare(uncertainty, uncertainty)
    }
    const expanded = times(uncertainty, 2)
    const isLow = limits.low !== null && isOver(plus(of(limits.low), expanded), least)
    const isHigh = limits.high !== null && isOver(plus(greatest, expanded), of(limits.high))
    if (!isLow && !isHigh) within += 1
  }
  return within
}
