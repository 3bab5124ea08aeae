import type { Valve } from '../../engine/valves.ts'
import { valveKindTitles } from '../../engine/valves.ts'
import type { FeatureDefinition, FeatureReference } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import {
  coilBindRoom,
  deckFlatness,
  headFlatness,
  retainerRoom,
  seatRunOut,
  valveGuide,
  valveStem,
  valveToPiston,
} from './references.ts'
import type { ValveRoomDirection } from './references.ts'

const length = { quantity: 'length', nominal: null, state: [] } as const

/** A guide near both ends, where it wears bell-mouthed, along and across the way the rocker pushes. */
export function guideFeature(valve: Valve): FeatureDefinition {
  return {
    ...valveGuide(valve), ...length, title: `${titleOf(valve)} guide`, shape: 'hole',
    points: toAndFro(['top', 'middle', 'bottom'], ['along-rocker', 'across-rocker']),
  }
}

/** A stem where it runs in its guide. */
export function stemFeature(valve: Valve): FeatureDefinition {
  return {
    ...valveStem(valve), ...length, title: `${titleOf(valve)} stem`, shape: 'shaft',
    points: toAndFro(['top', 'middle', 'bottom'], ['across']),
  }
}

/** One turn of an indicator on a pilot in the finished guide. */
export function seatRunOutFeature(valve: Valve): FeatureDefinition {
  return {
    ...seatRunOut(valve), ...length, title: `${titleOf(valve)} seat run-out`, shape: 'other',
    points: [point('seat', 'one-turn')],
  }
}

/** Travel left in the spring, valve at full lift, before its coils touch. */
export function coilBindFeature(valve: Valve): FeatureDefinition {
  return atFullLift(coilBindRoom(valve), `${titleOf(valve)} spring to coil bind`)
}

/** Between retainer and seal or guide, valve at full lift. */
export function retainerRoomFeature(valve: Valve): FeatureDefinition {
  return atFullLift(retainerRoom(valve), `${titleOf(valve)} retainer to seal`)
}

/** The least room between a valve and its piston near top centre on overlap. */
export function valveToPistonFeature(direction: ValveRoomDirection, valve: Valve): FeatureDefinition {
  return {
    ...valveToPiston(direction, valve), ...length, title: `${titleOf(valve)} to piston, ${direction}`, shape: 'gap',
    points: [point('overlap', direction)],
  }
}

/** A head's face under the straight edge: along, across and corner to corner. */
export function headFlatnessFeature(head: number): FeatureDefinition {
  return face(headFlatness(head), `Head ${head} face flatness`)
}

/** The deck under a head, in the same way. */
export function deckFlatnessFeature(head: number): FeatureDefinition {
  return face(deckFlatness(head), `Deck flatness under head ${head}`)
}

function titleOf({ kind, number }: Valve): string {
  return `${valveKindTitles[kind]} valve ${number}`
}

function atFullLift(reference: FeatureReference, title: string): FeatureDefinition {
  return { ...reference, ...length, title, shape: 'gap', points: [point('full-lift', 'axial')] }
}

function face(reference: FeatureReference, title: string): FeatureDefinition {
  return {
    ...reference, ...length, title, shape: 'other',
    points: toAndFro(['straight-edge'], ['along', 'across', 'one-diagonal', 'other-diagonal']),
  }
}
