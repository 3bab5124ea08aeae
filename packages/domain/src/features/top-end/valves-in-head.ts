import type { Valve } from '../../engine/valves.ts'
import { valveKindTitles } from '../../engine/valves.ts'
import type { FeatureDefinition } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import {
  guideBody, guideHole, installedHeight, leakDown, seatBody, seatHole, seatWidth, springLoad, valveLash, valveMargin,
} from './references.ts'

const length = { quantity: 'length', nominal: null, state: [] } as const
const acrossBoth = ['along-rocker', 'across-rocker']

/** The hole that a new guide is driven into, and the guide before it goes in. */
export function guidePressFeatures(valve: Valve): readonly FeatureDefinition[] {
  return [
    {
      ...guideHole(valve), ...length, title: `${titleOf(valve)} guide’s hole in the head`, shape: 'hole',
      points: toAndFro(['top', 'bottom'], acrossBoth),
    },
    {
      ...guideBody(valve), ...length, title: `${titleOf(valve)} guide, outside`, shape: 'shaft',
      points: toAndFro(['top', 'bottom'], ['across']),
    },
  ]
}

/** The counterbore for a new seat ring, and the ring before it goes in. */
export function seatPressFeatures(valve: Valve): readonly FeatureDefinition[] {
  return [
    {
      ...seatHole(valve), ...length, title: `${titleOf(valve)} seat’s counterbore`, shape: 'hole',
      points: toAndFro(['counterbore'], acrossBoth),
    },
    {
      ...seatBody(valve), ...length, title: `${titleOf(valve)} seat ring, outside`, shape: 'shaft',
      points: toAndFro(['ring'], acrossBoth),
    },
  ]
}

/** The width of the ground ring on which the valve closes. */
export function seatWidthFeature(valve: Valve): FeatureDefinition {
  return {
    ...seatWidth(valve), ...length, title: `${titleOf(valve)} seat width`, shape: 'width',
    points: toAndFro(['seat'], acrossBoth),
  }
}

/** What is left of the valve’s rim between its face and its head. */
export function valveMarginFeature(valve: Valve): FeatureDefinition {
  return {
    ...valveMargin(valve), ...length, title: `${titleOf(valve)} margin`, shape: 'width',
    points: [point('rim', 'thinnest')],
  }
}

/** From the spring’s seat to its retainer, valve closed. */
export function installedHeightFeature(valve: Valve): FeatureDefinition {
  return {
    ...installedHeight(valve), ...length, title: `${titleOf(valve)} spring, installed height`, shape: 'gap',
    points: [point('spring', 'axial')],
  }
}

/** How hard the spring presses in a tester set to its installed height, valve closed. */
export function springLoadFeature(valve: Valve): FeatureDefinition {
  return {
    ...springLoad(valve), title: `${titleOf(valve)} spring, load at installed height`, shape: 'other', quantity: 'force',
    nominal: null, state: [], points: [point('installed-height', 'load')],
  }
}

/** Between rocker or follower and valve, the cam on its heel; of a hydraulic lifter, how far its plunger is pressed in. */
export function lashFeature(valve: Valve): FeatureDefinition {
  return {
    ...valveLash(valve), ...length, title: `${titleOf(valve)} lash`, shape: 'gap', points: [point('valve', 'on-heel')],
  }
}

/** Pressure that a cylinder loses of the 100 psi (689 kPa) it is fed at top centre. */
export function leakDownFeature(cylinder: number): FeatureDefinition {
  return {
    ...leakDown(cylinder), title: `Leak-down of cylinder ${cylinder}`, shape: 'other', quantity: 'pressure', nominal: null,
    state: [], points: [point('top-centre', 'lost')],
  }
}

function titleOf({ kind, number }: Valve): string {
  return `${valveKindTitles[kind]} valve ${number}`
}
