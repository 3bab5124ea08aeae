import type { Shape } from '../features/feature.ts'
import { DomainError } from '../errors.ts'
import { sayLength } from './format-length.ts'
import { nanometresOf, subtract, type Nanometres } from './length.ts'
import { lengthSuffixes, type ReaderUnit } from './length-unit.ts'
import { parseDeviation, type GaugeSense } from './parse-deviation.ts'
import { parseFeelers } from './parse-feelers.ts'
import { parseLength } from './parse-length.ts'
import { isTail, parseTail } from './parse-tail.ts'

/** What is known of a gauge and a feature before a figure is typed. */
export interface SizeTyping {
  /** Unit of a figure that names none. */
  readonly unit: ReaderUnit
  readonly shape: Shape
  /** The size to expect; null where none can be named, or when the gauge was set on the mate. */
  readonly nominal: number | null
  /** Size at which a comparator was set to zero, and which way it counts; null for a gauge that reads sizes. */
  readonly setting: { readonly size: number; readonly sense: GaugeSense } | null
  /** The gauge is a set of feelers: `18/19` is an interval. */
  readonly readsBlades: boolean
}

/** A typed figure as a size. */
export interface TypedSize {
  /** Of feelers, the thickest pack that entered. */
  readonly value: Nanometres
  /** What the gauge itself showed: the deviation of a comparator, else the size. */
  readonly shown: Nanometres
  /** Present for feelers: the thinnest pack that did not enter; null where none was tried. */
  readonly blades: { readonly stops: Nanometres | null } | null
  /** The whole of it in words, wherever less than the size was typed. */
  readonly echo: string | null
}

/** Within this of its nominal a short figure is a size; beyond it, the last digits of one: 0.060 in. From memory. */
const NEAR = 1_524_000

/**
 * Reads what is typed at a bench: a full size (`4.0303`), a comparator’s deviation in tenths or microns (`+3`, `-1.5`), a
 * journal’s last digits (`0995`), or feelers (`18/19`; `18/` where no thicker one was tried). With a setting, a figure of
 * three decimals or more (two in millimetres) is in the reader’s unit, a shorter one counts tenths or microns.
 * @throws DomainError as parseLength, parseTail and parseFeelers
 */
export function readSize(text: string, typing: SizeTyping): TypedSize {
  const { unit, setting, readsBlades, nominal, shape } = typing
  if (readsBlades && text.includes('/')) return readBlades(text, unit)
  if (setting !== null && !isFullSize(text, setting.size, unit)) return readDeviation(text, unit, setting)
  if (shape === 'shaft' && nominal !== null && isTail(text) && !isNear(text, nominal, unit)) {
    const { size, echo } = parseTail(text, nanometresOf(nominal), unit)
    return { value: size, shown: size, blades: null, echo: `${echo}.` }
  }
  const value = parseLength(text, unit)
  return { value, shown: value, blades: null, echo: null }
}

function readBlades(text: string, unit: ReaderUnit): TypedSize {
  const { enters, stops } = parseFeelers(text.replace(/\/\s*$/, ''), unit)
  const upTo = stops === null ? '' : `, ${sayLength(stops, unit)} does not`
  return { value: enters, shown: enters, blades: { stops }, echo: `${sayLength(enters, unit)} enters${upTo}.` }
}

function readDeviation(text: string, unit: ReaderUnit, { size, sense }: NonNullable<SizeTyping['setting']>): TypedSize {
  const counts = isFine(text, unit) ? unit : unit === 'inch' ? 'tenth' : 'micron'
  const value = parseDeviation(text, nanometresOf(size), counts, sense)
  const shown = subtract(value, nanometresOf(size))
  return { value, shown, blades: null, echo: sayDeviation(shown, size, unit) }
}

/**
 * What a comparator shows on its setting, off zero, in tenths or microns as a deviation is typed.
 * @throws DomainError as parseLength
 */
export function readZero(text: string, unit: ReaderUnit, sense: GaugeSense): Nanometres {
  return readDeviation(text, unit, { size: 0, sense }).value
}

/** A deviation in words, so that a sign read the wrong way shows: “0.0004 in larger than 4.0300 in.” */
export function sayDeviation(deviation: number, settingSize: number, unit: ReaderUnit): string {
  const set = sayLength(settingSize, unit)
  if (deviation === 0) return `${set}, as it was set.`
  return `${sayLength(Math.abs(deviation), unit)} ${deviation > 0 ? 'larger' : 'smaller'} than ${set}.`
}

/** Unsigned, in full, and something like the size that the gauge is set to. */
function isFullSize(text: string, settingSize: number, unit: ReaderUnit): boolean {
  if (/^\s*[+\-−]/.test(text) || !(isFine(text, unit) || namesUnit(text))) return false
  const ratio = tryLength(text, unit) / settingSize
  return ratio > 0.5 && ratio < 2
}

/** As many decimals as a size has and a count of tenths or microns has not. */
function isFine(text: string, unit: ReaderUnit): boolean {
  const decimals = /[.,](\d+)\s*$/.exec(text)?.[1]?.length ?? 0
  return decimals >= (unit === 'inch' ? 3 : 2)
}

function namesUnit(text: string): boolean {
  const suffix = /[^\d\s.,/+\-−][^\d\s]*$/.exec(text.trim())?.[0].toLowerCase()
  return suffix !== undefined && ['inch', 'millimetre'].includes(lengthSuffixes[suffix] ?? '')
}

function isNear(text: string, nominal: number, unit: ReaderUnit): boolean {
  return Math.abs(tryLength(text, unit) - nominal) <= NEAR
}

function tryLength(text: string, unit: ReaderUnit): number {
  try {
    return parseLength(text, unit)
  } catch (error) {
    if (error instanceof DomainError) return Number.NaN
    throw error
  }
}
