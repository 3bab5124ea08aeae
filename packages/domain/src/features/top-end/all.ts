import type { EngineSpecification } from '../../engine/specification.ts'
import { camBearingsOf, headBoltCount, headsOf, isInBlock, liftersOf, valveKinds, valvesOf } from '../../engine/valves.ts'
import { cylindersInHandOrder } from '../../layout/banks.ts'
import type { FeatureDefinition } from '../feature.ts'
import {
  camBearingFeature, camCentrelineFeature, camEndPlayFeature, camJournalFeature, lifterBodyFeature, lifterBoreFeature,
} from './camshaft.ts'
import { headBoltFeatures } from './head-bolts.ts'
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
import {
  guidePressFeatures, installedHeightFeature, lashFeature, leakDownFeature, seatPressFeatures, seatWidthFeature,
  springLoadFeature, valveMarginFeature,
} from './valves-in-head.ts'

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
  readonly camEndPlay: readonly FeatureDefinition[]
  readonly camCentreline: readonly FeatureDefinition[]
  readonly guidePresses: readonly FeatureDefinition[]
  readonly seatPresses: readonly FeatureDefinition[]
  readonly seatWidths: readonly FeatureDefinition[]
  readonly valveMargins: readonly FeatureDefinition[]
  readonly intakeHeights: readonly FeatureDefinition[]
  readonly exhaustHeights: readonly FeatureDefinition[]
  readonly intakeLoads: readonly FeatureDefinition[]
  readonly exhaustLoads: readonly FeatureDefinition[]
  readonly intakeLashes: readonly FeatureDefinition[]
  readonly exhaustLashes: readonly FeatureDefinition[]
  readonly leakDowns: readonly FeatureDefinition[]
  readonly headBoltTorques: readonly FeatureDefinition[]
  readonly headBoltAngles: readonly FeatureDefinition[]
  readonly headBoltStretches: readonly FeatureDefinition[]
}

/** All that can be measured on the heads and the valve train of this engine. */
export function topEndFeatures(engine: EngineSpecification): TopEndFeatures {
  const valves = valveKinds.flatMap((kind) => valvesOf(engine, kind))
  const journals = camBearingsOf(engine)
  const lifters = liftersOf(engine)
  const [intake, exhaust] = [valvesOf(engine, 'intake'), valvesOf(engine, 'exhaust')]
  const headBolts = headsOf(engine).map((head) => headBoltFeatures(head, headBoltCount(engine, head)))
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
    camEndPlay: isInBlock(engine) ? [camEndPlayFeature()] : [],
    camCentreline: [camCentrelineFeature()],
    guidePresses: valves.flatMap(guidePressFeatures),
    seatPresses: valves.flatMap(seatPressFeatures),
    seatWidths: valves.map(seatWidthFeature),
    valveMargins: valves.map(valveMarginFeature),
    intakeHeights: intake.map(installedHeightFeature),
    exhaustHeights: exhaust.map(installedHeightFeature),
    intakeLoads: intake.map(springLoadFeature),
    exhaustLoads: exhaust.map(springLoadFeature),
    intakeLashes: intake.map(lashFeature),
    exhaustLashes: exhaust.map(lashFeature),
    leakDowns: cylindersInHandOrder(engine).map(leakDownFeature),
    headBoltTorques: headBolts.map(({ torque }) => torque),
    headBoltAngles: headBolts.map(({ angle }) => angle),
    headBoltStretches: headBolts.map(({ stretch }) => stretch),
  }
}
