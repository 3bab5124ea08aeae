import { Decimal } from 'decimal.js'
import Qty from 'js-quantities'

/** The arithmetic of one library: what it takes to work out a fit's value and hold it to its limits. */
export interface Arithmetic<Value> {
  readonly of: (nanometres: number) => Value
  readonly nanometres: (value: Value) => number
  readonly plus: (one: Value, other: Value) => Value
  readonly less: (one: Value, other: Value) => Value
  readonly times: (one: Value, factor: number) => Value
  readonly isOver: (one: Value, other: Value) => boolean
  readonly rootSumSquare: (one: Value, other: Value) => Value
  /** One over the other, a plain number. */
  readonly ratio: (one: Value, other: Value) => number
}

/** A general units library, in millimetres: a quantity carries its unit, and every operation looks at it. */
export const unitsLibrary: Arithmetic<ReturnType<typeof Qty>> = {
  of: (nanometres) => Qty(nanometres / 1e6, 'mm'),
  nanometres: (value) => value.to('nm').scalar,
  plus: (one, other) => one.add(other),
  less: (one, other) => one.sub(other),
  times: (one, factor) => one.mul(factor),
  isOver: (one, other) => one.gt(other),
  rootSumSquare: (one, other) => Qty(Math.sqrt(one.mul(one).add(other.mul(other)).to('mm2').scalar), 'mm'),
  ratio: (one, other) => one.div(other).scalar,
}

/** A decimal library, in millimetres. */
export const decimalLibrary: Arithmetic<Decimal> = {
  of: (nanometres) => new Decimal(nanometres).div(1e6),
  nanometres: (value) => value.times(1e6).toNumber(),
  plus: (one, other) => one.plus(other),
  less: (one, other) => one.minus(other),
  times: (one, factor) => one.times(factor),
  isOver: (one, other) => one.gt(other),
  rootSumSquare: (one, other) => one.times(one).plus(other.times(other)).sqrt(),
  ratio: (one, other) => one.div(other).toNumber(),
}
