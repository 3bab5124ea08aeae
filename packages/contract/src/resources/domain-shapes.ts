import {
  arrangements, benchKinds, clockedGaps, duties, inspectionMethods, measuringStates, quantities, reducers, rotations, ruleLevels, shapes, stages,
  verdictKinds, workKinds,
} from '@tenths/domain'
import { z } from 'zod'
import { BaseValue } from '../primitives.ts'

/** The domain's shapes as they travel: a type test holds each equal to the domain's own type. */

export const Duty = z.enum(duties)
export const Stage = z.enum(stages)
export const BenchKind = z.enum(benchKinds)
export const WorkKind = z.enum(workKinds)
export const Quantity = z.enum(quantities)
export const VerdictKind = z.enum(verdictKinds)
export const MeasuringState = z.enum(measuringStates)

export const FeatureReference = z.object({ place: z.string(), feature: z.string() })
export const Point = z.object({ key: z.string(), station: z.string(), axis: z.string() })
export const FeatureDefinition = FeatureReference.extend({
  title: z.string(),
  shape: z.enum(shapes),
  quantity: Quantity,
  nominal: BaseValue.nullable(),
  points: z.array(Point),
  state: z.array(MeasuringState),
  beside: z.array(z.object({ place: z.string(), feature: z.string().nullable() })).exactOptional(),
})

export const Limits = z.object({
  low: BaseValue.nullable(),
  high: BaseValue.nullable(),
  target: BaseValue.nullable(),
  adviceLow: BaseValue.nullable(),
  adviceHigh: BaseValue.nullable(),
})

export const Measurand = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('feature'), feature: FeatureReference, reducer: z.enum(reducers) }),
  z.object({
    kind: z.literal('clearance'),
    hole: FeatureReference,
    shaft: FeatureReference,
    pairing: z.enum(['overall', 'by-station']),
  }),
  z.object({
    kind: z.literal('apart'),
    feature: FeatureReference,
    set: z.array(FeatureReference),
    from: z.enum(['least', 'greatest']),
  }),
  z.object({
    kind: z.literal('sum'),
    constant: z.int(),
    terms: z.array(
      z.object({ feature: FeatureReference, factor: z.number(), reducer: z.enum(['least', 'greatest', 'mean']) }),
    ),
  }),
])

export const Why = z.object({
  rule: z.string(),
  revision: z.int(),
  level: z.enum(ruleLevels),
  formula: z.string(),
  worked: z.array(z.string()),
  source: z.string(),
})

export const RemedyRule = z.object({
  action: z.enum([
    'hone', 'grind', 'file', 'face', 'deck', 'lighten', 'replace', 'thinner-shell', 'thicker-shell', 'shim', 'advise',
    'investigate',
  ]),
  feature: FeatureReference.nullable(),
  words: z.string(),
})

export const Requirement = z.object({
  key: z.string(),
  fit: z.string(),
  title: z.string(),
  position: z.int().nullable(),
  quantity: Quantity,
  measurand: Measurand,
  limits: Limits,
  guard: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('none') }),
    z.object({ kind: z.literal('guarded'), coverageFactor: z.number() }),
  ]),
  critical: z.boolean(),
  remedy: z.object({ low: RemedyRule.nullable(), high: RemedyRule.nullable() }),
  why: Why,
})

export const InspectionMethod = z.enum(inspectionMethods)
export const Observation = z.object({
  key: z.string(),
  title: z.string(),
  asks: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('words'), label: z.string() }),
    z.object({ kind: z.literal('since'), minutes: z.int() }),
  ]).exactOptional(),
})
/** An area of a part that is tested for cracks or leaks. */
export const Inspection = z.object({
  key: z.string(), title: z.string(), place: z.string(), methods: z.array(InspectionMethod),
})
/** How bobweights are made up: which rods hang on each pin, what share of the reciprocating weight counts. */
export const BobweightRule = z.object({
  pins: z.array(z.object({ crankpin: z.int(), cylinders: z.array(z.int()) })),
  factor: z.int().nullable(),
  oil: BaseValue,
  hasRetainers: z.boolean(),
  source: z.string(),
})
/** The bobweight of one crankpin as it follows from what is weighed. */
export const BobweightFigure = z.object({
  crankpin: z.int(),
  cylinders: z.array(z.int()),
  value: BaseValue.nullable(),
  missing: z.array(z.string()),
  formula: z.string(),
  worked: z.array(z.string()),
  source: z.string(),
})
export const Operation = z.object({
  key: z.string(),
  title: z.string(),
  stage: Stage,
  bench: BenchKind,
  minutes: z.int(),
  after: z.array(z.string()),
  features: z.array(FeatureReference),
  requirements: z.array(z.string()),
  observations: z.array(Observation),
  cautions: z.array(z.string()),
  signatures: z.union([z.literal(1), z.literal(2)]),
  inspections: z.array(Inspection).exactOptional(),
  lots: z.array(z.string()).exactOptional(),
  bobweights: BobweightRule.exactOptional(),
})

export const PlanFinding = z.object({
  key: z.string(),
  severity: z.enum(['stops', 'look']),
  title: z.string(),
  sentence: z.string(),
  worked: z.array(z.string()),
  remedy: z.string(),
})

export const CylinderOrientation = z.object({
  cylinder: z.int(),
  bank: z.enum(['viewer-left', 'viewer-right']).nullable(),
  crankpin: z.int(),
  placeOnPin: z.int(),
  wideChamferFaces: z.enum(['front', 'back']).nullable(),
  frontMark: z.literal('front'),
  majorThrust: z.enum(['left', 'right', 'up', 'down']),
  majorThrustHour: z.union([z.literal(3), z.literal(9)]),
  hand: z.enum(['with-mark', 'against-mark']).nullable(),
})

const ClockedGap = z.enum(clockedGaps)
/** Where the gaps of one piston are to lie on its crown, front at 12 o’clock; angles in thousandths of a degree. */
export const RingClock = z.object({
  cylinder: z.int(),
  majorThrustHour: z.union([z.literal(3), z.literal(9)]),
  gaps: z.array(z.object({ gap: ClockedGap, angle: z.int() })),
  faults: z.array(
    z.object({
      gap: ClockedGap,
      against: z.union([ClockedGap, z.enum(['major-thrust', 'minor-thrust', 'pin'])]),
      distance: z.int(),
      least: z.int(),
    }),
  ),
})

/** What decides how an engine is drawn. */
export const Layout = z.object({
  arrangement: z.enum(arrangements),
  /** Thousandths of a degree between the banks. */
  bankAngle: z.int(),
  rotation: z.enum(rotations),
  pistonsHaveFrontMark: z.boolean(),
})

export const Verdict = z.object({
  requirement: z.string(),
  kind: VerdictKind,
  least: BaseValue.nullable(),
  greatest: BaseValue.nullable(),
  uncertainty: z.number().nullable(),
  guardBand: z.number(),
  probability: z.number().nullable(),
  side: z.enum(['low', 'high', 'both']).nullable(),
  missing: z.array(z.string()),
  readings: z.array(z.string()),
  remedy: z
    .object({
      action: z.string(),
      amount: BaseValue.nullable(),
      feature: FeatureReference.nullable(),
      reaches: z.enum(['target', 'limits', 'neither']),
      sentence: z.string(),
    })
    .nullable(),
  advice: z.string().nullable(),
})
