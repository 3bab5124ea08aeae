import { sayLength } from '../exact/format-length.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import type { FeatureDefinition } from '../features/feature.ts'
import { formConvention, outOfRound, sizeOf, taper, type FormFigure, type Size } from './form.ts'
import type { FeaturePass } from './pass.ts'

/**
 * What one pass says of a feature; `complete` is false while points are missing, and then no form is given.
 */
export interface DerivedFeature {
  readonly complete: boolean
  readonly size: Size | null
  readonly outOfRound: FormFigure | null
  readonly taper: FormFigure | null
}

/**
 * Size and form of a feature from one pass. A partial pass gives neither: it may mix what was and what will
 * be.
 */
export function deriveFeature(definition: FeatureDefinition, pass: FeaturePass | null): DerivedFeature {
  const values = new Map((pass?.readings ?? []).map(({ point, value }) => [point, value]))
  const readings = definition.points.flatMap(({ key, station, axis }) => {
    const value = values.get(key)
    return value === undefined ? [] : [{ station, axis, value }]
  })
  if (readings.length === 0 || readings.length < definition.points.length) {
    return { complete: false, size: null, outOfRound: null, taper: null }
  }
  return {
    complete: true,
    size: sizeOf(readings.map(({ value }) => value)),
    outOfRound: outOfRound(readings),
    taper: taper(readings),
  }
}

/** The same in words, for those who cannot see the picture. */
export function describeFeature(derived: DerivedFeature, unit: ReaderUnit): string {
  if (!derived.complete || derived.size === null) return 'Not fully measured.'
  const { mean, least, greatest } = derived.size
  const size = least === greatest
    ? `${sayLength(mean, unit)} everywhere.`
    : `${sayLength(least, unit)} to ${sayLength(greatest, unit)}.`
  const form = [
    derived.outOfRound && `Out-of-round ${sayLength(derived.outOfRound.value, unit)} at the ${spoken(derived.outOfRound.at)}.`,
    derived.taper && `Taper ${sayLength(derived.taper.value, unit)} on the ${spoken(derived.taper.at)} axis.`,
  ].filter((sentence) => sentence !== null)
  return form.length === 0 ? size : `${size} ${form.join(' ')} (${formConvention.name}.)`
}

/** A station or an axis as a person says it: `60-left` is “60° left”. */
function spoken(key: string): string {
  return key.replace(/^(\d+)-/, '$1° ').replaceAll('-', ' ')
}
