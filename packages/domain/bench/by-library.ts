import { Decimal } from 'decimal.js'
import Qty from 'js-quantities'
import { featureOf, indexFeatures, type FeatureReference, type Measurand, type Point } from '../src/index.ts'
import type { MeasuredShortBlock } from './short-block.ts'

/** The arithmetic of one library: what it takes to work out a fit's value and hold it to its limits. */
interface Arithmetic<Value> {
  readonly of: (nanometres: number) => Value
  readonly plus: (one: Value, other: Value) => Value
  readonly less: (one: Value, other: Value) => Value
  readonly times: (one: Value, factor: number) => Value
  readonly isOver: (one: Value, other: Value) => boolean
  readonly rootSumSquare: (one: Value, other: Value) => Value
  /** One over the other, a plain number. */
  readonly ratio: (one: Value, other: Value) => number
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
  ratio: (one, other) => one.div(other).scalar,
}

/** A decimal library, in millimetres. */
export const decimalLibrary: Arithmetic<Decimal> = {
  of: (nanometres) => new Decimal(nanometres).div(1e6),
  plus: (one, other) => one.plus(other),
  less: (one, other) => one.minus(other),
  times: (one, factor) => one.times(factor),
  isOver: (one, other) => one.gt(other),
  rootSumSquare: (one, other) => one.times(one).plus(other.times(other)).sqrt(),
  ratio: (one, other) => one.div(other).toNumber(),
}

/** What the sums of one sheet come to: how many lines are within, not proven and outside. */
export type Tally = Record<'within' | 'not-proven' | 'outside', number>

/**
 * The sums of the fit sheet in a library's arithmetic, from the same stored readings, values kept as the library's own:
 * least and greatest, form section by section, both sides of a clearance station by station, standard and expanded
 * uncertainty, margins to both limits in standard uncertainties, and the verdict. Less than judge does (no normal
 * distribution, remedy, advice or check that a pass is full).
 */
export function sumsByLibrary<Value>(block: MeasuredShortBlock, arithmetic: Arithmetic<Value>): Tally {
  const { of, plus, less, times, isOver, rootSumSquare, ratio } = arithmetic
  const index = indexFeatures(block.features)
  const nothing = of(0)

  const measured = (reference: FeatureReference) => {
    const pass = block.measurements.latestPass(reference)
    if (pass === null) throw new Error('The short block must be fully measured.')
    const { points } = featureOf(index, reference)
    const values = pass.readings.map(({ value }, at) => ({ value: of(value), point: points[at] as Point }))
    return { values, uncertainty: of(pass.standardUncertainty) }
  }
  type Values = ReturnType<typeof measured>['values']

  const extremesOf = (values: Values) => {
    let [least, greatest] = [values[0]!.value, values[0]!.value]
    for (const { value } of values) {
      if (isOver(least, value)) least = value
      if (isOver(value, greatest)) greatest = value
    }
    return { least, greatest }
  }
  const bySection = (values: Values, along: 'station' | 'axis') =>
    [...new Set(values.map(({ point }) => point[along]))]
      .map((section) => ({ section, values: values.filter(({ point }) => point[along] === section) }))
  const largestSpread = (values: Values, along: 'station' | 'axis') => {
    let largest = nothing
    for (const section of bySection(values, along)) {
      const { least, greatest } = extremesOf(section.values)
      const spread = less(greatest, least)
      if (isOver(spread, largest)) largest = spread
    }
    return largest
  }
  const clearanceOf = (holes: Values, shafts: Values) => {
    const [hole, shaft] = [extremesOf(holes), extremesOf(shafts)]
    return { least: less(hole.least, shaft.greatest), greatest: less(hole.greatest, shaft.least) }
  }
  const clearanceByStation = (holes: Values, shafts: Values) => {
    const spans = bySection(holes, 'station').flatMap(({ section, values }) => {
      const here = shafts.filter(({ point }) => point.station === section)
      return here.length === 0 ? [] : [clearanceOf(values, here)]
    })
    return spans.reduce((all, span) => ({
      least: isOver(all.least, span.least) ? span.least : all.least,
      greatest: isOver(span.greatest, all.greatest) ? span.greatest : all.greatest,
    }))
  }
  const valueOf = (measurand: Exclude<Measurand, { kind: 'sum' }>) => {
    if (measurand.kind === 'clearance') {
      const [hole, shaft] = [measured(measurand.hole), measured(measurand.shaft)]
      const span = measurand.pairing === 'overall' ? clearanceOf : clearanceByStation
      return { ...span(hole.values, shaft.values), uncertainty: rootSumSquare(hole.uncertainty, shaft.uncertainty) }
    }
    const { values, uncertainty } = measured(measurand.feature)
    if (measurand.reducer === 'out-of-round' || measurand.reducer === 'taper') {
      const figure = largestSpread(values, measurand.reducer === 'taper' ? 'axis' : 'station')
      return { least: figure, greatest: figure, uncertainty: rootSumSquare(uncertainty, uncertainty) }
    }
    const { least, greatest } = extremesOf(values)
    return measurand.reducer === 'least' ? { least, greatest: least, uncertainty } : { least, greatest, uncertainty }
  }

  const tally: Tally = { within: 0, 'not-proven': 0, outside: 0 }
  for (const { measurand, limits, guard } of block.requirements) {
    if (measurand.kind === 'sum') continue
    const { least, greatest, uncertainty } = valueOf(measurand)
    const expanded = times(uncertainty, 2)
    const band = guard.kind === 'none' ? nothing : expanded
    let kind: keyof Tally = 'within'
    for (const margin of [
      limits.low === null ? null : less(least, of(limits.low)),
      limits.high === null ? null : less(of(limits.high), greatest),
    ]) {
      if (margin === null) continue
      const standardised = ratio(margin, uncertainty)
      if (Number.isNaN(standardised)) throw new Error('A margin must be a number.')
      if (isOver(nothing, plus(margin, band))) kind = 'outside'
      else if (isOver(band, margin) && kind === 'within') kind = 'not-proven'
    }
    tally[kind] += 1
  }
  return tally
}
