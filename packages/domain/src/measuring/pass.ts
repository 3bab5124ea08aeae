import type { FeatureReference, MeasuringState } from '../features/feature.ts'
import type { Warmth } from '../temperature/correct-reading.ts'

/** One reading that counts: the end of its chain of corrections. */
export interface CountingReading {
  readonly id: string
  readonly point: string
  /** In the feature's base unit; for a pass set on the mate, the clearance itself. */
  readonly value: number
  /** Read with feelers: `value` enters, and `stops` does not; null where no thicker blade was tried. */
  readonly blades?: { readonly stops: number | null } | undefined
}

/** What was in place while a pass was taken: a part, and which pass of its feature counted then; 0 before its first. */
export interface BesidePart {
  readonly partId: string
  readonly feature: string | null
  readonly pass: number
}

/**
 * One full or partial measuring of a feature of one part, with one gauge in one state. `setOn` names the mating
 * feature when the gauge was set on that very part: its values are clearances and carry one uncertainty only.
 */
export interface FeaturePass {
  readonly partId: string
  readonly feature: string
  readonly number: number
  /** Standard uncertainty u of one reading, in the base unit. */
  readonly standardUncertainty: number
  readonly state: readonly MeasuringState[]
  readonly setOn: { readonly partId: string; readonly feature: string } | null
  readonly readings: readonly CountingReading[]
  /** What it was taken beside; absent when that is not recorded. */
  readonly beside?: readonly BesidePart[]
  /** Temperatures by which its sizes are corrected to 20 °C; null or left out where they are taken as read. */
  readonly warmth?: Warmth | null
  /** Its gauge's zero had drifted when it was checked: it was read, and says nothing. */
  readonly isVoid?: boolean
}

/** Which part sits where now. */
export interface PlacedPart {
  readonly place: string
  readonly partId: string
}

/** What is known when judging: the part in each place and the latest pass of each of its features. */
export interface Measurements {
  partAt(place: string): string | null
  latestPass(reference: FeatureReference): FeaturePass | null
}

/** Finds readings through places: a piston moved to another bore brings its measurements along. */
export function measurementsOf(placed: readonly PlacedPart[], passes: readonly FeaturePass[]): Measurements {
  const parts = new Map(placed.map((entry) => [entry.place, entry.partId]))
  const latest = new Map<string, Map<string, FeaturePass>>()
  for (const pass of passes) {
    const ofPart = latest.get(pass.partId)
    const known = ofPart?.get(pass.feature)
    if (ofPart === undefined) latest.set(pass.partId, new Map([[pass.feature, pass]]))
    else if (known === undefined || known.number < pass.number) ofPart.set(pass.feature, pass)
  }
  return {
    partAt: (place) => parts.get(place) ?? null,
    latestPass: ({ place, feature }) => {
      const partId = parts.get(place)
      return partId === undefined ? null : (latest.get(partId)?.get(feature) ?? null)
    },
  }
}
