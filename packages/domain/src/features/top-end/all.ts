import type { EngineSpecification } from '../../engine/specification.ts'
import { camBearingsOf, headsOf, liftersOf, valveKinds, valvesOf } from '../../engine/valves.ts'
import type { FeatureDefinition } from '../feature.ts'
import { camBearingFeature, camJournalFeature, lifterBodyFeature, lifterBoreFeature } from './camshaft.ts'
import {
  coilBindFeature,
  deckFlatnessFeature,
  guideFeature,
  headFlatnessFeature,
  retainerRoomFeature,
  seatRunOutFeature,
  stemFeature,
  valveToPistonFeature,
} from './heads.ts'
import { valveRoomDirections } from './references.ts'

/** The features of heads and valve train by family. */
export interface TopEndFeatures {
  readonly guides: readonly FeatureDefinition[]
  readonly stems: readonly FeatureDefinition[]
  readonly seatRunOuts: readonly FeatureDefinition[]
  readonly headFaces: readonly FeatureDefinition[]
  readonly deckFaces: readonly FeatureDefinition[]
  readonly springRooms: readonly FeatureDefinition[]
  readonly valveRooms: readonly FeatureDefinition[]
  readonly camBearings: readonly FeatureDefinition[]
  readonly camJournals: readonly FeatureDefinition[]
  readonly lifterBores: readonly FeatureDefinition[]
  readonly lifters: readonly FeatureDefinition[]
}

/** All that can be measured on the heads and the valve train of this engine. */
export function topEndFeatures(engine: EngineSpecification): TopEndFeatures {
  const valves = valveKinds.flatMap((kind) => valvesOf(engine, kind))
  const journals = camBearingsOf(engine)
  const lifters = liftersOf(engine)
  return {
    guides: valves.map(guideFeature),
    stems: valves.map(stemFeature),
    seatRunOuts: valves.map(seatRunOutFeature),
    headFaces: headsOf(engine).map(headFlatnessFeature),
    deckFaces: headsOf(engine).map(deckFlatnessFeature),
    springRooms: valves.flatMap((valve) => [coilBindFeature(valve), retainerRoomFeature(valve)]),
    valveRooms: valves.flatMap((valve) =>
      valveRoomDirections.map((direction) => valveToPistonFeature(direction, valve)),
    ),
    camBearings: journals.map(camBearingFeature),
    camJournals: journals.map(camJournalFeature),
    lifterBores: lifters.map(lifterBoreFeature),
    lifters: lifters.map(lifterBodyFeature),
  }
}
