import type { FeatureReference } from './feature.ts'

// Every feature of a short block by its name: fits, route and readings meet in these references.

export const bore = (cylinder: number): FeatureReference => ({
  place: 'block',
  feature: `bore-${cylinder}`,
})
export const crosshatch = (cylinder: number): FeatureReference => ({
  place: 'block',
  feature: `crosshatch-${cylinder}`,
})
export const boreRoughness = (cylinder: number): FeatureReference => ({
  place: 'block',
  feature: `roughness-${cylinder}`,
})
export const mainHousing = (journal: number): FeatureReference => ({
  place: 'block',
  feature: `main-housing-${journal}`,
})
export const deckHeight = (bank: string): FeatureReference => ({
  place: 'block',
  feature: `deck-height-${bank}`,
})

export const mainJournal = (journal: number): FeatureReference => ({
  place: 'crankshaft',
  feature: `main-journal-${journal}`,
})
export const rodJournal = (journal: number): FeatureReference => ({
  place: 'crankshaft',
  feature: `rod-journal-${journal}`,
})

export const bigEnd = (cylinder: number): FeatureReference => ({
  place: `rod/${cylinder}`,
  feature: 'big-end',
})
export const smallEnd = (cylinder: number): FeatureReference => ({
  place: `rod/${cylinder}`,
  feature: 'small-end',
})
export const skirt = (cylinder: number): FeatureReference => ({
  place: `piston/${cylinder}`,
  feature: 'skirt',
})
export const pinBore = (cylinder: number): FeatureReference => ({
  place: `piston/${cylinder}`,
  feature: 'pin-bore',
})
export const pinDiameter = (cylinder: number): FeatureReference => ({
  place: `piston-pin/${cylinder}`,
  feature: 'diameter',
})

export const pistonWeight = (cylinder: number): FeatureReference => ({
  place: `piston/${cylinder}`,
  feature: 'weight',
})
export const pinWeight = (cylinder: number): FeatureReference => ({
  place: `piston-pin/${cylinder}`,
  feature: 'pin-weight',
})
export const bigEndWeight = (cylinder: number): FeatureReference => ({
  place: `rod/${cylinder}`,
  feature: 'big-end-weight',
})
export const smallEndWeight = (cylinder: number): FeatureReference => ({
  place: `rod/${cylinder}`,
  feature: 'small-end-weight',
})
// Rings, retainers and shells come in sets that are alike: one of each is weighed for the whole engine.
export const ringSetWeight: FeatureReference = { place: 'assembly', feature: 'ring-set-weight' }
export const retainersWeight: FeatureReference = { place: 'assembly', feature: 'retainers-weight' }
export const shellsWeight: FeatureReference = { place: 'assembly', feature: 'shells-weight' }
export const crankUnbalance: FeatureReference = { place: 'crankshaft', feature: 'unbalance' }

export const compressionRings = ['top-ring', 'second-ring'] as const
export type CompressionRing = (typeof compressionRings)[number]

export const endGap = (ring: CompressionRing, cylinder: number): FeatureReference => ({
  place: `${ring}/${cylinder}`,
  feature: 'end-gap',
})
export const ringSideClearance = (
  ring: CompressionRing | 'oil-ring',
  cylinder: number,
): FeatureReference => ({
  place: `${ring}/${cylinder}`,
  feature: 'side-clearance',
})
export const ringBackClearance = (ring: CompressionRing, cylinder: number): FeatureReference => ({
  place: `${ring}/${cylinder}`,
  feature: 'back-clearance',
})
export const railGap = (cylinder: number): FeatureReference => ({
  place: `oil-ring/${cylinder}`,
  feature: 'rail-gap',
})

export const mainBearing = (journal: number): FeatureReference => ({
  place: `main-bearing/${journal}`,
  feature: 'bore',
})
export const rodBearing = (cylinder: number): FeatureReference => ({
  place: `rod-bearing/${cylinder}`,
  feature: 'bore',
})

export const rodBoltStretch = (cylinder: number): FeatureReference => ({
  place: `rod-bolts/${cylinder}`,
  feature: 'stretch',
})
export const rodBoltTorque = (cylinder: number): FeatureReference => ({
  place: `rod-bolts/${cylinder}`,
  feature: 'torque',
})
export const mainBoltTorque = (journal: number): FeatureReference => ({
  place: `main-bolts/${journal}`,
  feature: 'torque',
})
export const rodBoltAngle = (cylinder: number): FeatureReference => ({
  place: `rod-bolts/${cylinder}`,
  feature: 'angle',
})
export const rodBoltSet = (cylinder: number): FeatureReference => ({
  place: `rod-bolts/${cylinder}`,
  feature: 'set',
})
export const mainBoltAngle = (journal: number): FeatureReference => ({
  place: `main-bolts/${journal}`,
  feature: 'angle',
})
export const mainRunOut = (journal: number): FeatureReference => ({
  place: 'crankshaft',
  feature: `run-out-${journal}`,
})

export const crankEndPlay: FeatureReference = { place: 'assembly', feature: 'end-play' }
export const finalCrankEndPlay: FeatureReference = { place: 'assembly', feature: 'final-end-play' }
export const rodSideClearance = (journal: number): FeatureReference => ({
  place: 'assembly',
  feature: `rod-side-clearance-${journal}`,
})
export const deckClearanceAt = (cylinder: number): FeatureReference => ({
  place: 'assembly',
  feature: `deck-clearance-${cylinder}`,
})
export const pinEndPlayAt = (cylinder: number): FeatureReference => ({
  place: 'assembly',
  feature: `pin-end-play-${cylinder}`,
})
export const crankTurningTorque: FeatureReference = { place: 'assembly', feature: 'turning-torque-crank' }
export const assembledTurningTorque: FeatureReference = {
  place: 'assembly',
  feature: 'turning-torque-assembled',
}
export const pickUpToPan: FeatureReference = { place: 'assembly', feature: 'pick-up-to-pan' }
