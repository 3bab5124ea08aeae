import { cylindersInHandOrder } from '../../layout/banks.ts'
import type { EngineSpecification, PartsSpecification } from '../../engine/specification.ts'
import type { CylinderOrientation } from '../../layout/orientation-types.ts'
import type { FeatureDefinition } from '../feature.ts'
import {
  assembledTurningTorque,
  compressionRings,
  crankEndPlay,
  crankTurningTorque,
  finalCrankEndPlay,
} from '../references.ts'
import {
  crankEndPlayFeature,
  deckClearanceFeature,
  mainBearingFeature,
  mainBoltAngleFeature,
  mainBoltTorqueFeature,
  pickUpToPanFeature,
  pinEndPlayFeature,
  rodBearingFeature,
  rodBoltAngleFeature,
  rodBoltSetFeature,
  rodBoltStretchFeature,
  rodBoltTorqueFeature,
  rodSideClearanceFeature,
  turningTorqueFeature,
} from './assembled.ts'
import { boreFeature, boreRoughnessFeature, crosshatchFeature, deckHeightFeature, mainHousingFeature } from './block.ts'
import { mainJournalFeature, mainRunOutFeature, rodJournalFeature } from './crankshaft.ts'
import { backClearanceFeature, endGapFeature, railGapFeature, sideClearanceFeature } from './rings.ts'
import { crankUnbalanceFeature, setWeightFeatures, weightFeatures } from './weights.ts'
import {
  bigEndFeature,
  pinBoreFeature,
  pinFeature,
  skirtFeature,
  smallEndFeature,
} from './rods-and-pistons.ts'

/** The features of a short block by family, each family in the order in which a hand meets them. */
export interface ShortBlockFeatures {
  readonly bores: readonly FeatureDefinition[]
  readonly crosshatches: readonly FeatureDefinition[]
  readonly boreRoughnesses: readonly FeatureDefinition[]
  readonly mainHousings: readonly FeatureDefinition[]
  readonly deckHeights: readonly FeatureDefinition[]
  readonly mainJournals: readonly FeatureDefinition[]
  readonly rodJournals: readonly FeatureDefinition[]
  readonly bigEnds: readonly FeatureDefinition[]
  readonly smallEnds: readonly FeatureDefinition[]
  readonly skirts: readonly FeatureDefinition[]
  readonly pinBores: readonly FeatureDefinition[]
  readonly pins: readonly FeatureDefinition[]
  readonly ringGaps: readonly FeatureDefinition[]
  readonly railGaps: readonly FeatureDefinition[]
  readonly ringSideClearances: readonly FeatureDefinition[]
  readonly oilRingSideClearances: readonly FeatureDefinition[]
  readonly ringBackClearances: readonly FeatureDefinition[]
  readonly mainBearings: readonly FeatureDefinition[]
  readonly rodBearings: readonly FeatureDefinition[]
  readonly trialEndPlay: readonly FeatureDefinition[]
  readonly finalEndPlay: readonly FeatureDefinition[]
  readonly rodSideClearances: readonly FeatureDefinition[]
  readonly deckClearances: readonly FeatureDefinition[]
  readonly pinEndPlays: readonly FeatureDefinition[]
  readonly rodBoltStretches: readonly FeatureDefinition[]
  readonly rodBoltTorques: readonly FeatureDefinition[]
  readonly rodBoltAngles: readonly FeatureDefinition[]
  readonly rodBoltSets: readonly FeatureDefinition[]
  readonly mainBoltTorques: readonly FeatureDefinition[]
  readonly mainBoltAngles: readonly FeatureDefinition[]
  readonly mainRunOuts: readonly FeatureDefinition[]
  readonly pistonWeights: readonly FeatureDefinition[]
  readonly pinWeights: readonly FeatureDefinition[]
  readonly bigEndWeights: readonly FeatureDefinition[]
  readonly smallEndWeights: readonly FeatureDefinition[]
  readonly setWeights: readonly FeatureDefinition[]
  readonly crankUnbalance: readonly FeatureDefinition[]
  readonly pickUpToPan: readonly FeatureDefinition[]
  readonly crankTurningTorque: readonly FeatureDefinition[]
  readonly assembledTurningTorque: readonly FeatureDefinition[]
}

/** All that can be measured on a short block of this engine. */
export function shortBlockFeatures(
  engine: EngineSpecification,
  parts: PartsSpecification,
  cylinders: readonly CylinderOrientation[],
): ShortBlockFeatures {
  const order = cylindersInHandOrder(engine)
  const oriented = order.flatMap((number) => cylinders.filter(({ cylinder }) => cylinder === number))
  const ofCylinders = (make: (cylinder: number) => FeatureDefinition) => order.map(make)
  const mains = numbersTo(engine.mains.count)
  const pins = numbersTo(engine.rodJournals.count)
  return {
    bores: ofCylinders((cylinder) => boreFeature(engine, cylinder)),
    crosshatches: ofCylinders(crosshatchFeature),
    boreRoughnesses: ofCylinders(boreRoughnessFeature),
    mainHousings: mains.map((journal) => mainHousingFeature(engine, journal)),
    deckHeights: deckHeights(engine, cylinders),
    mainJournals: mains.map((journal) => mainJournalFeature(engine, journal)),
    rodJournals: pins.map((journal) => rodJournalFeature(engine, journal)),
    bigEnds: ofCylinders((cylinder) => bigEndFeature(engine, cylinder)),
    smallEnds: ofCylinders((cylinder) => smallEndFeature(parts, cylinder)),
    skirts: ofCylinders((cylinder) => skirtFeature(parts, cylinder)),
    pinBores: ofCylinders((cylinder) => pinBoreFeature(parts, cylinder)),
    pins: ofCylinders((cylinder) => pinFeature(parts, cylinder)),
    // Bore by bore, top ring before second: a ring gets its bore's mark at once.
    ringGaps: order.flatMap((cylinder) => compressionRings.map((ring) => endGapFeature(ring, cylinder))),
    railGaps: ofCylinders(railGapFeature),
    ringSideClearances: order.flatMap((cylinder) =>
      compressionRings.map((ring) => sideClearanceFeature(ring, cylinder)),
    ),
    oilRingSideClearances: ofCylinders((cylinder) => sideClearanceFeature('oil-ring', cylinder)),
    ringBackClearances: order.flatMap((cylinder) =>
      compressionRings.map((ring) => backClearanceFeature(ring, cylinder)),
    ),
    mainBearings: mains.map((journal) => mainBearingFeature(engine, journal)),
    rodBearings: oriented.map((cylinder) => rodBearingFeature(engine, cylinder)),
    trialEndPlay: [crankEndPlayFeature(crankEndPlay, 'Crankshaft end play, trial')],
    finalEndPlay: [crankEndPlayFeature(finalCrankEndPlay, 'Crankshaft end play, final')],
    rodSideClearances: pins.map((journal) => rodSideClearanceFeature(journal, cylinders)),
    deckClearances: oriented.map(deckClearanceFeature),
    pinEndPlays: ofCylinders(pinEndPlayFeature),
    rodBoltStretches: ofCylinders(rodBoltStretchFeature),
    rodBoltTorques: ofCylinders(rodBoltTorqueFeature),
    rodBoltAngles: ofCylinders(rodBoltAngleFeature),
    rodBoltSets: ofCylinders(rodBoltSetFeature),
    mainBoltTorques: mains.map(mainBoltTorqueFeature),
    mainBoltAngles: mains.map(mainBoltAngleFeature),
    // The crank lies in its end mains: those between run out.
    mainRunOuts: mains.slice(1, -1).map(mainRunOutFeature),
    ...weightFeatures(order),
    setWeights: setWeightFeatures(parts),
    crankUnbalance: [crankUnbalanceFeature()],
    pickUpToPan: [pickUpToPanFeature()],
    crankTurningTorque: [turningTorqueFeature(crankTurningTorque, 'Turning torque, crank alone')],
    assembledTurningTorque: [turningTorqueFeature(assembledTurningTorque, 'Turning torque, assembled')],
  }
}

function numbersTo(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index + 1)
}

function deckHeights(
  engine: EngineSpecification,
  cylinders: readonly CylinderOrientation[],
): readonly FeatureDefinition[] {
  const banks = [...new Set(cylinders.map(({ bank }) => bank))]
  return banks.map((bank) => {
    if (bank === null) return deckHeightFeature(engine, 'only', 'Deck height')
    const words = bank === 'viewer-left' ? 'bank on the viewer’s left' : 'bank on the viewer’s right'
    return deckHeightFeature(engine, bank, `Deck height, ${words}`)
  })
}
