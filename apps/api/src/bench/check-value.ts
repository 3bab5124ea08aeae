import {
  checkResolution, DomainError, nanometresOf, parseQuantity, quantityUnits, readerUnits, readsBlades, readSize, sayLength,
  type Doubt, type FeatureDefinition, type OtherQuantity, type QuantityUnitName, type ReaderUnit, type TypedSize,
} from '@tenths/domain'
import { ServiceError } from '../http/problem.ts'
import { resolutionOf, senseOf, type GaugeInUse } from './gauge-in-use.ts'

/** A value as it came from the bench: the whole number that is kept, beside the words that were typed. */
export interface TypedValue {
  readonly value: number
  readonly typed: string
  /** Feelers: the blade that did not enter. */
  readonly blades?: { readonly stops: number | null }
  /** The machinist looked at an unlikely value and stands by it. */
  readonly confirmed: boolean
  /** Why a value beyond belief is right. */
  readonly note?: string | null
}

export interface MeasuringContext {
  readonly definition: FeatureDefinition
  readonly gauge: Pick<GaugeInUse, 'resolution' | 'analogue' | 'clockwiseIsSmaller' | 'kind'>
  /** The gauge was set on the mating part: the value is the clearance itself, not a size. */
  readonly isSetOnMate: boolean
  /** What a comparator was set to zero on; null for a gauge that reads sizes. */
  readonly settingSize: number | null
  readonly unit: ReaderUnit
  /** What speaks against the value, from the domain. */
  readonly doubts: readonly Doubt[]
}

/**
 * Refuses a value that does not follow from what was typed, that is finer than its gauge can show, or that looks like a
 * slip nobody stood by: an unlikely one must be confirmed, one beyond belief needs a note.
 * @throws ServiceError with the domain's code or `value-implausible`, at `field`
 */
export function checkValue(reading: TypedValue, context: MeasuringContext, field: string): void {
  try {
    const typed = context.definition.quantity === 'length' ? readTyped(reading, context) : null
    if (typed === null) checkOther(reading, context.definition.quantity as OtherQuantity)
    // A slip in the unit is seldom a whole number of divisions either: what went wrong is said first.
    const doubt = context.doubts.find((one) => !standsBy(reading, one))
    if (doubt !== undefined) throw new Implausible(doubt.sentence)
    if (typed !== null && typed.blades === null) checkResolution(typed.shown, resolutionOf(context.gauge))
  } catch (error) {
    if (error instanceof DomainError) throw new ServiceError(error.code, error.message, field)
    if (error instanceof Implausible) throw new ServiceError('value-implausible', error.message, field)
    throw error
  }
}

class Implausible extends Error {}

function standsBy({ confirmed, note }: TypedValue, { outcome }: Doubt): boolean {
  const hasNote = (note ?? '').trim() !== ''
  return outcome === 'block' ? hasNote : hasNote || confirmed
}

/** What was typed, read as the bench reads it; the device may show the other unit than the shop. */
function readTyped(reading: TypedValue, context: MeasuringContext): TypedSize {
  const { definition, gauge, isSetOnMate, settingSize, unit } = context
  const readIn = (as: ReaderUnit) => readSize(reading.typed, {
    unit: as, shape: definition.shape, nominal: isSetOnMate ? null : definition.nominal,
    setting: settingSize === null ? null : { size: settingSize, sense: senseOf(gauge) },
    readsBlades: readsBlades(gauge.kind),
  })
  const typed = readerUnits.flatMap((as) => attempt(() => readIn(as)))
    .find(({ value, blades }) => value === reading.value && blades?.stops === reading.blades?.stops)
  if (typed === undefined) {
    readIn(unit)
    throw new Implausible(`“${reading.typed}” is not the ${sayLength(nanometresOf(reading.value), unit)} that came with it. Type it again.`)
  }
  if (!isSetOnMate && definition.shape !== 'other' && reading.value <= 0) {
    throw new DomainError('value-out-of-range', `${definition.title} cannot be nothing or less.`)
  }
  return typed
}

/**
 * Torque, angle, mass and pressure are rounded once into their base unit, so the same text gives the same
 * number again.
 */
function checkOther({ value, typed }: TypedValue, quantity: OtherQuantity): void {
  const units = (Object.keys(quantityUnits) as QuantityUnitName[]).filter(
    (name) => quantityUnits[name].quantity === quantity,
  )
  const meant = units.flatMap((name) => attempt(() => parseQuantity(typed, name)))
  if (meant.length === 0) throw new DomainError('number-unreadable', `“${typed}” is not a figure.`)
  if (!meant.includes(value)) {
    throw new Implausible(
      `“${typed}” is not the value that came with it. Type it again.`,
    )
  }
}

function attempt<T>(read: () => T): T[] {
  try {
    return [read()]
  } catch {
    return []
  }
}
