/** What kinds of part a job tracks one by one. A place names a kind and, where there are several, its number. */
export const partKinds = [
  'block', 'crankshaft', 'rod', 'piston', 'piston-pin', 'top-ring', 'second-ring', 'oil-ring',
  'main-bearing', 'rod-bearing', 'rod-bolts', 'main-bolts', 'camshaft', 'assembly',
  'head', 'head-bolts', 'intake-valve', 'exhaust-valve', 'cam-bearing', 'lifter', 'head-gasket',
] as const
export type PartKind = (typeof partKinds)[number]

/** Where a part sits: `block`, `crankshaft`, or kind and number such as `piston/3`. */
export type Place = string

/** A feature of whatever part sits in a place: a requirement finds its readings through this, at judging time. */
export interface FeatureReference {
  readonly place: Place
  readonly feature: string
}

/** What is measured, and in which whole base unit its values are stored. */
export const quantities = ['length', 'torque', 'angle', 'mass', 'pressure', 'roughness', 'unbalance', 'force'] as const
export type Quantity = (typeof quantities)[number]

/** One place on a feature where a gauge is put: `station` along it, `axis` around it. */
export interface Point {
  /** Stable key such as `top/thrust`; unique within the feature. */
  readonly key: string
  readonly station: string
  readonly axis: string
}

/** Which way a machine can change the feature: grinding and honing only take metal off. */
export const shapes = ['hole', 'shaft', 'gap', 'width', 'other'] as const
export type Shape = (typeof shapes)[number]

/**
 * What else is in place while a feature is read: a part, and which of its features the reading depends on; null
 * when only the part as such does. A ring gap is true of one bore as it was honed.
 */
export interface Neighbour {
  readonly place: Place
  readonly feature: string | null
}

/** A feature to be measured: its points in the order a hand moves. */
export interface FeatureDefinition extends FeatureReference {
  readonly title: string
  readonly shape: Shape
  readonly quantity: Quantity
  /** Nominal value in the quantity's base unit (nanometres for a length); null where none can be named. */
  readonly nominal: number | null
  readonly points: readonly Point[]
  /** State in which a reading counts for fits, such as `torque-plate-on`; empty when any will do. */
  readonly state: readonly MeasuringState[]
  /** What it is read in place with; absent when the part is measured by itself. */
  readonly beside?: readonly Neighbour[]
}

/** The state a reading is true for; a change of state voids it for fits. */
export const measuringStates = ['torque-plate-on', 'caps-torqued', 'shells-in', 'soaked', 'coated'] as const
export type MeasuringState = (typeof measuringStates)[number]

/** The text under which a feature of a place is looked up. */
export function featureKey(reference: FeatureReference): string {
  return `${reference.place}#${reference.feature}`
}

/** The kind of part that belongs in a place, and its number where there are several. */
export function partOfPlace(place: Place): { kind: PartKind; number: number | null } {
  const [kind, number] = place.split('/')
  return { kind: kind as PartKind, number: number === undefined ? null : Number(number) }
}
