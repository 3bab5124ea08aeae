import {
  featureOf, indexFeatures, standardNormal,
  type FeatureReference, type Limits, type Measurand, type Point, type Requirement, type Verdict,
} from '../src/index.ts'
import type { Arithmetic } from './library-arithmetic.ts'
import type { MeasuredShortBlock } from './short-block.ts'

/** What a library's sums say of one line of the sheet, in its own values. */
export interface Line<Value> {
  readonly kind: Exclude<Verdict['kind'], 'not-measured'>
  readonly least: Value
  readonly greatest: Value
  /** Expanded uncertainty. */
  readonly uncertainty: Value
  readonly probability: number
  readonly isAdvised: boolean
  /** From an outside value to its target. */
  readonly change: Value | null
}

/**
 * The sums of the fit sheet in a library's arithmetic, from the same stored readings, values kept as the library's own:
 * least and greatest, form section by section, both sides of a clearance, standard and expanded uncertainty, margins to
 * both limits, verdict, probability, advice and the way to the target. Less than judge does: no check that a pass is full
 * and in its state, no readings named, no sentence.
 */
export function sumsByLibrary<Value>(block: MeasuredShortBlock, arithmetic: Arithmetic<Value>): Line<Value>[] {
  const { of, plus, less, times, isOver, rootSumSquare, ratio } = arithmetic
  const index = indexFeatures(block.features)
  const nothing = of(0)

  const measured = (reference: FeatureReference) => {
    const pass = block.measurements.latestPass(reference)
    if (pass === null) throw new Error('The short block must be fully measured.')
    const { points } = featureOf(index, reference)
    return { values: pass.readings.map(({ value }) => of(value)), points, uncertainty: of(pass.standardUncertainty) }
  }

  const spanOf = (values: readonly Value[]) => {
    let [least, greatest] = [values[0] as Value, values[0] as Value]
    for (const value of values) {
      if (isOver(least, value)) least = value
      if (isOver(value, greatest)) greatest = value
    }
    return { least, greatest }
  }
  const largestSpread = (values: readonly Value[], points: readonly Point[], along: 'station' | 'axis') => {
    const sections = new Map<string, Value[]>()
    for (const [at, value] of values.entries()) {
      const section = sections.get(points[at]![along])
      if (section === undefined) sections.set(points[at]![along], [value])
      else section.push(value)
    }
    let largest = nothing
    for (const section of sections.values()) {
      const { least, greatest } = spanOf(section)
      const spread = less(greatest, least)
      if (isOver(spread, largest)) largest = spread
    }
    return largest
  }
  const valueOf = (measurand: Measurand) => {
    if (measurand.kind === 'clearance' && measurand.pairing === 'overall') {
      const [holes, shafts] = [measured(measurand.hole), measured(measurand.shaft)]
      const [hole, shaft] = [spanOf(holes.values), spanOf(shafts.values)]
      return {
        least: less(hole.least, shaft.greatest), greatest: less(hole.greatest, shaft.least),
        uncertainty: rootSumSquare(holes.uncertainty, shafts.uncertainty),
      }
    }
    if (measurand.kind !== 'feature') throw new Error(`No line of this sheet is a ${measurand.kind}.`)
    const { values, points, uncertainty } = measured(measurand.feature)
    switch (measurand.reducer) {
      case 'each': return { ...spanOf(values), uncertainty }
      case 'least': {
        const { least } = spanOf(values)
        return { least, greatest: least, uncertainty }
      }
      case 'out-of-round':
      case 'taper': {
        const figure = largestSpread(values, points, measurand.reducer === 'taper' ? 'axis' : 'station')
        return { least: figure, greatest: figure, uncertainty: rootSumSquare(uncertainty, uncertainty) }
      }
      default: throw new Error(`No line of this sheet asks for the ${measurand.reducer}.`)
    }
  }

  const lineOf = ({ measurand, limits, guard }: Requirement): Line<Value> => {
    const { least, greatest, uncertainty } = valueOf(measurand)
    const expanded = times(uncertainty, 2)
    const band = guard.kind === 'none' ? nothing : expanded
    const zoneOf = (margin: Value | null): Line<Value>['kind'] => {
      if (margin === null || !isOver(band, margin)) return 'within'
      return isOver(nothing, plus(margin, band)) ? 'outside' : 'not-proven'
    }
    const below = limits.low === null ? null : less(least, of(limits.low))
    const above = limits.high === null ? null : less(of(limits.high), greatest)
    const [low, high] = [zoneOf(below), zoneOf(above)]
    const kind = [low, high].find((zone) => zone === 'outside') ?? [low, high].find((zone) => zone === 'not-proven') ?? 'within'
    return {
      kind, least, greatest, uncertainty: expanded,
      probability: Math.max(0, chance(below, uncertainty) + chance(above, uncertainty) - 1),
      isAdvised: kind === 'within' && isBeyondAdvice(least, greatest, limits),
      change: kind === 'outside' && limits.target !== null ? changeTo(of(limits.target), least, greatest, low) : null,
    }
  }
  const chance = (margin: Value | null, uncertainty: Value) => (margin === null ? 1 : standardNormal(ratio(margin, uncertainty)))
  const isBeyondAdvice = (least: Value, greatest: Value, { adviceLow, adviceHigh }: Limits) =>
    (adviceHigh !== null && isOver(greatest, of(adviceHigh))) || (adviceLow !== null && isOver(of(adviceLow), least))
  const changeTo = (target: Value, least: Value, greatest: Value, low: Line<Value>['kind']) =>
    (low === 'outside' ? less(target, least) : less(greatest, target))

  return block.requirements.map(lineOf)
}
