import type { Valve } from '../../engine/valves.ts'
import type { FeatureReference } from '../feature.ts'

// Every feature of heads and valve train by its name: fits, route and readings meet in these references.

export const valveStem = ({ kind, number }: Valve): FeatureReference => ({
  place: `${kind}-valve/${number}`,
  feature: 'stem',
})
export const valveGuide = (valve: Valve): FeatureReference => onHead(valve, 'guide')
export const seatRunOut = (valve: Valve): FeatureReference => onHead(valve, 'seat-run-out')
export const coilBindRoom = (valve: Valve): FeatureReference => onHead(valve, 'coil-bind-room')
export const retainerRoom = (valve: Valve): FeatureReference => onHead(valve, 'retainer-room')
export const seatWidth = (valve: Valve): FeatureReference => onHead(valve, 'seat-width')
export const installedHeight = (valve: Valve): FeatureReference => onHead(valve, 'installed-height')
export const springLoad = (valve: Valve): FeatureReference => onHead(valve, 'spring-load')
export const guideHole = (valve: Valve): FeatureReference => onHead(valve, 'guide-hole')
export const guideBody = (valve: Valve): FeatureReference => onHead(valve, 'guide-body')
export const seatHole = (valve: Valve): FeatureReference => onHead(valve, 'seat-hole')
export const seatBody = (valve: Valve): FeatureReference => onHead(valve, 'seat-body')
export const valveMargin = ({ kind, number }: Valve): FeatureReference => ({
  place: `${kind}-valve/${number}`,
  feature: 'margin',
})
export const valveLash = ({ kind, number }: Valve): FeatureReference => ({
  place: 'assembly',
  feature: `${kind}-lash-${number}`,
})
export const leakDown = (cylinder: number): FeatureReference => ({
  place: 'assembly',
  feature: `leak-down-${cylinder}`,
})
export const camEndPlay: FeatureReference = { place: 'camshaft', feature: 'end-play' }
export const camCentreline: FeatureReference = { place: 'camshaft', feature: 'intake-centreline' }

export const headBoltTorque = (head: number): FeatureReference => ({ place: `head-bolts/${head}`, feature: 'torque' })
export const headBoltAngle = (head: number): FeatureReference => ({ place: `head-bolts/${head}`, feature: 'angle' })
export const headBoltStretch = (head: number): FeatureReference => ({ place: `head-bolts/${head}`, feature: 'stretch' })

export const headFlatness = (head: number): FeatureReference => ({
  place: `head/${head}`,
  feature: 'face-flatness',
})
export const deckFlatness = (head: number): FeatureReference => ({
  place: 'block',
  feature: `deck-flatness-${head}`,
})

export const valveRoomDirections = ['axial', 'radial'] as const
export type ValveRoomDirection = (typeof valveRoomDirections)[number]

export const valveToPiston = (direction: ValveRoomDirection, { kind, number }: Valve): FeatureReference => ({
  place: 'assembly',
  feature: `${kind}-valve-${number}-${direction}-room`,
})

export const camBearing = (journal: number): FeatureReference => ({
  place: `cam-bearing/${journal}`,
  feature: 'bore',
})
export const camJournal = (journal: number): FeatureReference => ({
  place: 'camshaft',
  feature: `journal-${journal}`,
})
export const lifterBore = (number: number): FeatureReference => ({
  place: 'block',
  feature: `lifter-bore-${number}`,
})
export const lifterBody = (number: number): FeatureReference => ({ place: `lifter/${number}`, feature: 'body' })

/** What belongs to one valve but sits in its head, or is set up there. */
function onHead({ kind, number, head }: Valve, feature: string): FeatureReference {
  return { place: `head/${head}`, feature: `${kind}-${feature}-${number}` }
}
