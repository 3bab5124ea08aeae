import type { BobweightRule } from '../balance/bobweight-rule.ts'
import type { Duty } from '../engine/duty.ts'
import type { EngineSpecification, PartsSpecification } from '../engine/specification.ts'
import type { FeatureDefinition, FeatureReference, Place } from '../features/feature.ts'
import type { Limits, Requirement, RuleLevel } from '../judging/requirement.ts'
import type { CylinderOrientation } from '../layout/orientation-types.ts'

export const stages = [
  'intake',
  'inspection',
  'planning',
  'machining',
  'fitting',
  'assembly',
  'handover',
] as const
export type Stage = (typeof stages)[number]

export const benchKinds = [
  'counter',
  'teardown',
  'wash',
  'inspection',
  'rod-bench',
  'office',
  'hand-work',
  'align-hone',
  'mill',
  'boring-bar',
  'hone',
  'crank-grinder',
  'rod-hone',
  'pin-hone',
  'balancer',
  'clean-bench',
  'assembly',
  'head-bench',
] as const
export type BenchKind = (typeof benchKinds)[number]

export const workKinds = [
  'short-block',
  'full-rebuild',
  'head-service',
  'bore-and-hone',
  'crank-regrind',
  'balancing',
] as const
export type WorkKind = (typeof workKinds)[number]

/**
 * What a thing to see asks for beside its tick: words that go into the record, or since when part and gauge
 * have stood side by side, at least so many minutes.
 */
export type Asked =
  | { readonly kind: 'words'; readonly label: string }
  | { readonly kind: 'since'; readonly minutes: number }

/** Something to be seen and ticked: *seen*, *not seen* or *not applicable*. */
export interface Observation {
  readonly key: string
  readonly title: string
  /** Left out where the tick is all. */
  readonly asks?: Asked
}

/** How a part is looked at for what the eye does not see. */
export const inspectionMethods = [
  'magnetic-particle', 'dye-penetrant', 'ultrasonic', 'eddy-current', 'pressure',
] as const
export type InspectionMethod = (typeof inspectionMethods)[number]

/** An area of a part that is tested for cracks or leaks: who tests says *no indication* or *indication*. */
export interface Inspection {
  /** Stable across re-planning and unique within the step, such as `rod-3`. */
  readonly key: string
  readonly title: string
  readonly place: Place
  /** Methods that can find something there, the usual one first. */
  readonly methods: readonly InspectionMethod[]
}

/** One step of the route. */
export interface Operation {
  /** Stable across re-planning, such as `hone-bores`. */
  readonly key: string
  readonly title: string
  readonly stage: Stage
  readonly bench: BenchKind
  /** Standard minutes of hands-on work. */
  readonly minutes: number
  readonly after: readonly string[]
  /** Features measured here, in the order a hand moves. */
  readonly features: readonly FeatureReference[]
  /** Requirements judged here. */
  readonly requirements: readonly string[]
  readonly observations: readonly Observation[]
  readonly cautions: readonly string[]
  readonly signatures: 1 | 2
  /** Areas tested for cracks or leaks here; left out where there are none. */
  readonly inspections?: readonly Inspection[]
  /** Places into which a part goes for good here, with its lot or serial; left out where there are none. */
  readonly lots?: readonly Place[]
  /** How the bobweights are made up that the crank is spun with here; left out where there are none. */
  readonly bobweights?: BobweightRule
}

/** Something the arithmetic found before metal was cut. */
export interface PlanFinding {
  readonly key: string
  readonly severity: 'stops' | 'look'
  readonly title: string
  readonly sentence: string
  readonly worked: readonly string[]
  readonly remedy: string
}

/** A limit from a maker's sheet, for this job: it outranks the shop's rules. */
export interface SheetLimit {
  readonly fit: string
  readonly level: Extract<RuleLevel, 'part-maker' | 'engine-maker'>
  readonly limits: Limits
  readonly source: string
}

/** The shop's own numbers for one fit: parameters by name, in the unit that the fit declares. */
export interface RuleRevision {
  readonly fit: string
  readonly revision: number
  readonly parameters: Readonly<Record<string, number>>
  readonly source: string
}

/** Everything a plan is computed from. */
export interface PlanInput {
  readonly work: WorkKind
  readonly engine: EngineSpecification
  readonly parts: PartsSpecification
  readonly duty: Duty
  readonly rules: readonly RuleRevision[]
  readonly sheets: readonly SheetLimit[]
  /** Options of the route: what was ordered or found. */
  readonly options: RouteOptions
}

export interface RouteOptions {
  readonly alignHone: boolean
  readonly deck: boolean
  readonly oversize: boolean
  readonly crank: 'grind' | 'polish' | 'none'
  readonly newRodBolts: boolean
  readonly balance: boolean
  /**
   * A stroke longer than the block was made for: trial assembly comes before balancing. Left out means no.
   */
  readonly stroked?: boolean
  /** New guides or seat rings are driven into the heads: their press fits are measured. Left out means no. */
  readonly newGuides?: boolean
  readonly newSeats?: boolean
}

/** Fit sheet and route: immutable once kept as a revision. */
export interface Plan {
  readonly input: PlanInput
  readonly features: readonly FeatureDefinition[]
  readonly requirements: readonly Requirement[]
  readonly operations: readonly Operation[]
  readonly findings: readonly PlanFinding[]
  readonly orientation: readonly CylinderOrientation[]
}
