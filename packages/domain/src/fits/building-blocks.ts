import { lengthFormats } from '../exact/format-length.ts'
import { formatLength, sayLength } from '../exact/format-length.ts'
import { round } from '../exact/rounding.ts'
import type { FeatureReference, Quantity } from '../features/feature.ts'
import type { Limits, Measurand, Reducer, RemedyRule } from '../judging/requirement.ts'
import { sayValue } from '../judging/say-value.ts'
import type { FitParameter, GuardChoice, ParameterUnit } from './fit-definition.ts'
import { guardChoices } from './fit-definition.ts'

/** Where starter figures come from when nobody published them. */
export const FROM_MEMORY = 'from memory'
export const COMMON_PRACTICE = 'common practice, no source'

/** 0.0001 in and 0.001 in, in which starter figures are written. */
export const TENTH = 2_540
export const THOUSANDTH = 25_400

/** One number of a starter rule. */
export function parameter(
  key: string,
  title: string,
  unit: ParameterUnit,
  value: number,
  source: string,
): FitParameter {
  return { key, title, unit, value, source }
}

/**
 * Whether a fit is guarded is the shop's choice, fit by fit: it is kept as a number of the rule like any
 * other.
 */
export function guardParameter(choice: GuardChoice): FitParameter {
  return parameter(
    'guard',
    'Near a limit: 0 accepted, 1 guarded, 2 guarded where the limits are wide',
    'guard',
    guardChoices.indexOf(choice),
    COMMON_PRACTICE,
  )
}

/** Limits with nothing said where nothing is given. */
export function limitsOf(given: Partial<Limits>): Limits {
  return { low: null, high: null, target: null, adviceLow: null, adviceHigh: null, ...given }
}

/** Both limits and, unless told, the middle as target. */
export function between(low: number, high: number, target = round((low + high) / 2, 'half-even')): Limits {
  return limitsOf({ low, high, target })
}

/**
 * Millionths of a diameter, in nanometres, half to even; `percent` scales it and is exact before the one
 * rounding.
 */
export function shareOf(diameter: number, millionths: number, percent = 100): number {
  return round((diameter * millionths * percent) / 100_000_000, 'half-even')
}

/** A length in both units for the worked lines of a why. */
export function say(length: number): string {
  return `${sayLength(length, 'inch')} (${sayLength(length, 'millimetre')})`
}

/** A figure of any quantity in both units, or once where they are the same. */
export function sayBoth(value: number, quantity: Quantity): string {
  const [inch, metric] = [sayValue(value, quantity, 'inch'), sayValue(value, quantity, 'millimetre')]
  return inch === metric ? inch : `${inch} (${metric})`
}

/** A share of the diameter, in the trade's words: the same number per inch and per millimetre. */
export function sayShare(millionths: number): string {
  // A millionth of an inch is 25.4 nm: the share is written as that many parts of one inch.
  const share = formatLength(round(millionths * 25.4, 'half-even'), lengthFormats.inchFine, 'half-even')
  return `${share} per unit of diameter`
}

/** Hole less shaft. */
export function clearance(
  hole: FeatureReference,
  shaft: FeatureReference,
  pairing: 'overall' | 'by-station',
): Measurand {
  return { kind: 'clearance', hole, shaft, pairing }
}

/** One feature, its points reduced to one value. */
export function reading(feature: FeatureReference, reducer: Reducer): Measurand {
  return { kind: 'feature', feature, reducer }
}

/** A remedy that works on a feature, or none where the part is changed or looked into. */
export function remedy(
  action: RemedyRule['action'],
  feature: FeatureReference | null,
  words: string,
): RemedyRule {
  return { action, feature, words }
}
