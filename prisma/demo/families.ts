import { NANOMETRES_PER_INCH, type FeatureReference } from '@tenths/domain'

/** Kinds of feature of heads and valve train; a valve's kind stands before most of their names. */
type TopEndFamily =
  | 'stem' | 'guide' | 'guide-hole' | 'guide-body' | 'seat-hole' | 'seat-body' | 'seat-run-out' | 'seat-width' | 'margin'
  | 'flatness' | 'coil-bind-room' | 'retainer-room' | 'installed-height' | 'valve-room' | 'journal' | 'lifter-bore' | 'body'
  | 'lash' | 'leak-down' | 'angle' | 'intake-centreline' | 'spring-load'

/** What goes on the scales. */
export const weighed = [
  'weight', 'pin-weight', 'big-end-weight', 'small-end-weight', 'ring-set-weight', 'retainers-weight', 'shells-weight',
] as const
export type Weighed = (typeof weighed)[number]

/** Kinds of feature that are made and measured alike, whatever their number. */
export type Family =
  | 'bore' | 'main-housing' | 'deck-height' | 'main-journal' | 'rod-journal' | 'big-end' | 'small-end' | 'skirt'
  | 'pin-bore' | 'diameter' | 'bearing' | 'end-gap' | 'rail-gap' | 'side-clearance' | 'back-clearance' | 'end-play' | 'final-end-play'
  | 'rod-side-clearance' | 'deck-clearance' | 'pin-end-play' | 'stretch' | 'torque' | 'turning-torque-crank'
  | 'turning-torque-assembled' | 'crosshatch' | 'roughness' | 'set' | 'run-out' | 'pick-up-to-pan' | Weighed | 'unbalance' | TopEndFamily

/** How parts of a family come out of machines and wear out in service. Lengths in nanometres, from memory. */
export interface Making {
  /** How far the middle of one part lies from that of the next, each way. */
  readonly betweenParts: number
  /** How far the points of one part lie from its middle, each way. */
  readonly withinPart: number
  /**
   * When it is measured before it is machined: how much metal is still on (of a gap: how much it is worn open), and
   * how uneven it is, each way.
   */
  readonly asFound: { readonly stock: number; readonly unevenness: number }
}

const tenths = (count: number): number => (count * NANOMETRES_PER_INCH) / 10_000
const nothing = { stock: 0, unevenness: 0 }

/** Balanced sets come matched within a gram. In milligrams. */
const matched = { betweenParts: 400, withinPart: 0, asFound: nothing }

/** Torques scatter in mN·m instead, angles in thousandths of a degree, leak-down in pascals, unbalance in mg·mm, loads in mN: a wrench clicks within a few in a hundred. */
export const making: Record<Family, Making> = {
  bore: { betweenParts: tenths(1), withinPart: tenths(1), asFound: { stock: tenths(42), unevenness: tenths(6) } },
  'main-housing': { betweenParts: tenths(1), withinPart: tenths(1), asFound: { stock: tenths(4), unevenness: tenths(2) } },
  'deck-height': { betweenParts: tenths(4), withinPart: tenths(4), asFound: { stock: tenths(60), unevenness: tenths(10) } },
  'main-journal': { betweenParts: tenths(0.8), withinPart: tenths(0.4), asFound: { stock: tenths(4), unevenness: tenths(2) } },
  'rod-journal': { betweenParts: tenths(0.8), withinPart: tenths(0.4), asFound: { stock: tenths(4), unevenness: tenths(2) } },
  'big-end': { betweenParts: tenths(0.8), withinPart: tenths(1), asFound: { stock: tenths(2), unevenness: tenths(2) } },
  'small-end': { betweenParts: tenths(0.4), withinPart: tenths(0.4), asFound: { stock: tenths(12), unevenness: tenths(1) } },
  skirt: { betweenParts: tenths(1), withinPart: 0, asFound: nothing },
  'pin-bore': { betweenParts: tenths(0.4), withinPart: tenths(0.4), asFound: nothing },
  diameter: { betweenParts: tenths(0.8), withinPart: tenths(0.3), asFound: nothing },
  bearing: { betweenParts: tenths(0.4), withinPart: tenths(0.3), asFound: nothing },
  'end-gap': { betweenParts: tenths(8), withinPart: 0, asFound: nothing },
  'rail-gap': { betweenParts: tenths(40), withinPart: tenths(20), asFound: nothing },
  'side-clearance': { betweenParts: tenths(3), withinPart: tenths(3), asFound: nothing },
  'back-clearance': { betweenParts: tenths(10), withinPart: 0, asFound: nothing },
  'end-play': { betweenParts: tenths(6), withinPart: 0, asFound: { stock: tenths(25), unevenness: 0 } },
  'final-end-play': { betweenParts: tenths(6), withinPart: 0, asFound: nothing },
  'rod-side-clearance': { betweenParts: tenths(15), withinPart: 0, asFound: nothing },
  'deck-clearance': { betweenParts: tenths(15), withinPart: tenths(10), asFound: nothing },
  'pin-end-play': { betweenParts: tenths(8), withinPart: 0, asFound: nothing },
  stretch: { betweenParts: tenths(1), withinPart: tenths(1), asFound: nothing },
  torque: { betweenParts: 700, withinPart: 700, asFound: nothing },
  set: { betweenParts: tenths(0.5), withinPart: tenths(0.5), asFound: nothing },
  'run-out': { betweenParts: tenths(2), withinPart: 0, asFound: nothing },
  'pick-up-to-pan': { betweenParts: tenths(200), withinPart: 0, asFound: nothing },
  stem: { betweenParts: tenths(0.5), withinPart: tenths(0.3), asFound: { stock: 0, unevenness: tenths(0.5) } },
  guide: { betweenParts: tenths(0.5), withinPart: tenths(0.4), asFound: { stock: -tenths(8), unevenness: tenths(3) } },
  'guide-hole': { betweenParts: tenths(0.5), withinPart: tenths(0.3), asFound: nothing },
  'guide-body': { betweenParts: tenths(0.3), withinPart: tenths(0.2), asFound: nothing },
  'seat-hole': { betweenParts: tenths(1), withinPart: tenths(0.5), asFound: nothing },
  'seat-body': { betweenParts: tenths(0.5), withinPart: tenths(0.3), asFound: nothing },
  'seat-run-out': { betweenParts: tenths(2), withinPart: 0, asFound: nothing },
  'seat-width': { betweenParts: tenths(40), withinPart: tenths(20), asFound: nothing },
  margin: { betweenParts: tenths(30), withinPart: 0, asFound: nothing },
  flatness: { betweenParts: tenths(2), withinPart: tenths(4), asFound: { stock: tenths(20), unevenness: tenths(5) } },
  'coil-bind-room': { betweenParts: tenths(50), withinPart: 0, asFound: nothing },
  'retainer-room': { betweenParts: tenths(50), withinPart: 0, asFound: nothing },
  'installed-height': { betweenParts: tenths(40), withinPart: 0, asFound: nothing },
  'valve-room': { betweenParts: tenths(40), withinPart: 0, asFound: nothing },
  journal: { betweenParts: tenths(0.5), withinPart: tenths(0.3), asFound: nothing },
  'lifter-bore': { betweenParts: tenths(0.5), withinPart: tenths(0.3), asFound: nothing },
  body: { betweenParts: tenths(0.4), withinPart: tenths(0.2), asFound: nothing },
  lash: { betweenParts: tenths(5), withinPart: 0, asFound: nothing },
  'leak-down': { betweenParts: 6_895, withinPart: 0, asFound: nothing },
  angle: { betweenParts: 500, withinPart: 500, asFound: nothing },
  weight: matched,
  'pin-weight': matched,
  'big-end-weight': matched,
  'small-end-weight': matched,
  'ring-set-weight': matched,
  'retainers-weight': matched,
  'shells-weight': matched,
  unbalance: { betweenParts: 20_000, withinPart: 30_000, asFound: nothing },
  'spring-load': { betweenParts: 6_000, withinPart: 0, asFound: nothing },
  'intake-centreline': { betweenParts: 250, withinPart: 0, asFound: nothing },
  'turning-torque-crank': { betweenParts: 700, withinPart: 0, asFound: nothing },
  crosshatch: { betweenParts: 3_000, withinPart: 0, asFound: nothing },
  roughness: { betweenParts: 60, withinPart: 0, asFound: nothing },
  'turning-torque-assembled': { betweenParts: 1_500, withinPart: 0, asFound: nothing },
}

/** The family of a feature: its name without its number or side, or the valve's kind. */
export function familyOf({ place, feature }: FeatureReference): Family {
  if (place.startsWith('main-bearing') || place.startsWith('rod-bearing')) return 'bearing'
  if (place.startsWith('cam-bearing')) return 'bearing'
  if (/flatness/.test(feature)) return 'flatness'
  if (/^(intake|exhaust)-valve-\d+-(axial|radial)-room$/.test(feature)) return 'valve-room'
  const bare = feature.replace(/-(\d+|viewer-left|viewer-right|only)$/, '')
  const name = bare in making ? bare : bare.replace(/^(intake|exhaust)-/, '')
  if (!(name in making)) throw new Error(`The demo shop does not know how to measure ${place}#${feature}.`)
  return name as Family
}
