import {
  checkMagnitude, checkResolution, DomainError, lengthUnits, nanometresOf, parseLength, parseQuantity,
  quantityUnits,
  sayLength, type Doubt, type FeatureDefinition, type Nanometres, type OtherQuantity, type QuantityUnitName,
  type ReaderUnit,
} from '@tenths/domain'
import { ServiceError } from '../http/problem.ts'

/** A value as it came from the bench: the whole number that is kept, beside the words that were typed. */
export interface TypedValue {
  readonly value: number
  readonly typed: string
  /** The machinist looked at an unlikely value and stands by it. */
  readonly confirmed: boolean
}

export interface MeasuringContext {
  readonly definition: FeatureDefinition
  readonly gauge: { readonly resolution: number; readonly analogue: boolean }
  /** The gauge was set on the mating part: the value is the clearance itself, not a size. */
  readonly isSetOnMate: boolean
  /** What the value is expected near when it is no size with a nominal: a requirement's target or limit. */
  readonly expected: number | null
  readonly unit: ReaderUnit
}

/**
 * Refuses a value that does not follow from what was typed, that is finer than its gauge can show, or that
 * gives a slip away: the wrong unit, the decimal point in the wrong place.
 * @throws ServiceError with the domain's code or `value-implausible`, at `field`
 */
export function checkValue(reading: TypedValue, context: MeasuringContext, field: string): void {
  try {
    const isLength = context.definition.quantity === 'length'
    if (isLength) checkLength(reading, context)
    else checkOther(reading, context.definition.quantity as OtherQuantity)
    // A slip in the unit is seldom a whole number of divisions either: what went wrong is said first.
    const doubt = doubtOf(reading.value, context)
    if (doubt !== null && !(doubt.outcome === 'ask' && reading.confirmed)) throw new Implausible(doubt.sentence)
    if (isLength) checkFineness(reading, context)
  } catch (error) {
    if (error instanceof DomainError) throw new ServiceError(error.code, error.message, field)
    if (error instanceof Implausible) throw new ServiceError('value-implausible', error.message, field)
    throw error
  }
}

class Implausible extends Error {}

/**
 * The value must be the length that was typed, or a size at which a comparator shows the deviation that was
 * typed.
 */
function checkLength(
  { value, typed }: TypedValue, { definition, isSetOnMate, unit }: MeasuringContext,
): void {
  const length = nanometresOf(value)
  const isTyped = lengthsTyped(typed, unit).includes(length)
  if (!isTyped && !isDeviation(typed)) {
    throw new Implausible(`“${typed}” is not the ${sayLength(value, unit)} that came with it. Type it again.`)
  }
  if (!isSetOnMate && definition.shape !== 'other' && value <= 0) {
    throw new DomainError('value-out-of-range', `${definition.title} cannot be nothing or less.`)
  }
}

/**
 * A comparator shows how far the size is from the one it was set at: its dial bounds the deviation, not the
 * size.
 */
function checkFineness({ value, typed }: TypedValue, { gauge, unit }: MeasuringContext): void {
  const length = nanometresOf(value)
  const shown = lengthsTyped(typed, unit).includes(length) ? [length] : lengthsTyped(typed, 'tenth')
  const resolution = {
    display: gauge.analogue ? 'analogue' : 'digital', division: nanometresOf(gauge.resolution),
  } as const
  if (!shown.some((figure) => isReadable(figure, resolution))) checkResolution(shown[0] ?? length, resolution)
}

function isDeviation(typed: string): boolean {
  return /^\s*[+\-−]/.test(typed)
}

/**
 * Every length that the text can mean: a text that names its unit means one, a bare figure one for each unit.
 */
function lengthsTyped(typed: string, first: ReaderUnit | 'tenth'): Nanometres[] {
  const meant = parseLength(typed, first)
  const others = lengthUnits.flatMap((unit) => {
    try {
      return [parseLength(typed, unit)]
    } catch {
      return []
    }
  })
  return [meant, ...others]
}

function isReadable(length: Nanometres, resolution: Parameters<typeof checkResolution>[1]): boolean {
  try {
    checkResolution(length, resolution)
    return true
  } catch {
    return false
  }
}

/**
 * Torque, angle, mass and pressure are rounded once into their base unit, so the same text gives the same
 * number again.
 */
function checkOther({ value, typed }: TypedValue, quantity: OtherQuantity): void {
  const units = (Object.keys(quantityUnits) as QuantityUnitName[]).filter(
    (name) => quantityUnits[name].quantity === quantity,
  )
  const meant = units.flatMap((name) => {
    try {
      return [parseQuantity(typed, name)]
    } catch {
      return []
    }
  })
  if (meant.length === 0) throw new DomainError('number-unreadable', `“${typed}” is not a figure.`)
  if (!meant.includes(value)) {
    throw new Implausible(
      `“${typed}” is not the value that came with it. Type it again.`,
    )
  }
}

/**
 * A size with a nominal cannot be 25 or 1000 times off, so that is never taken. What is judged only by its
 * limits (a clearance, an end play) can be far outside them and still be true: it is asked about once.
 */
function doubtOf(value: number, { definition, isSetOnMate, expected }: MeasuringContext): Doubt | null {
  if (!isSetOnMate && definition.nominal !== null) return checkMagnitude(value, definition.nominal)
  const doubt = checkMagnitude(value, expected)
  return doubt === null ? null : {
    ...doubt, outcome: 'ask', sentence: doubt.sentence.replace('nominal size', 'usual value'),
  }
}
