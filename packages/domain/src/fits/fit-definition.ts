import type { Duty } from '../engine/duty.ts'
import type { EngineSpecification, PartsSpecification } from '../engine/specification.ts'
import type { Quantity } from '../features/feature.ts'
import type { Limits, Measurand, RemedyRule } from '../judging/requirement.ts'
import type { CylinderOrientation } from '../layout/orientation-types.ts'
import type { PlanFinding, RouteOptions } from '../plan/plan-types.ts'

/**
 * What a fit may look at: one engine, its parts and its use. Never a reading: limits stand before metal is
 * cut.
 */
export interface FitContext {
  readonly engine: EngineSpecification
  readonly parts: PartsSpecification
  readonly duty: Duty
  readonly options: RouteOptions
  readonly cylinders: readonly CylinderOrientation[]
  /** Compressed thickness of the head gasket in nanometres; null while nobody has chosen one. */
  readonly gasketThickness: number | null
  /** Whether each oil ring stands on a support rail. */
  readonly supportRail: boolean
  /** Fits for which this job has a maker's sheet. */
  readonly sheets: ReadonlySet<string>
}

/**
 * Units of a rule's numbers: `length` whole nanometres; `per-diameter` millionths of the diameter (0.0009
 * in per inch is 900); `percent`; `torque` mN·m; `angle` thousandths of a degree; `roughness` nanometres; `pressure` Pa;
 * `mass` mg; `force` mN; `grade` thousandths of mm/s; `guard` one of `guardChoices` by index.
 */
export const parameterUnits = [
  'length', 'per-diameter', 'percent', 'torque', 'angle', 'roughness', 'pressure', 'mass', 'force', 'grade', 'guard',
] as const
export type ParameterUnit = (typeof parameterUnits)[number]

/**
 * How a fit is decided near its limits: simply, guarded by U, or guarded only where the limits leave room
 * for it.
 */
export const guardChoices = ['accepted', 'guarded', 'guarded-where-wide'] as const
export type GuardChoice = (typeof guardChoices)[number]

/** One number of a starter rule. The shop may replace it by a rule revision. */
export interface FitParameter {
  readonly key: string
  readonly title: string
  readonly unit: ParameterUnit
  readonly value: number
  readonly source: string
}

/**
 * Limits worked out from the rule's numbers, with the formula in words and with this engine's numbers in
 * it.
 */
export interface ComputedRule {
  readonly kind: 'computed'
  readonly limits: Limits
  readonly formula: string
  readonly worked: readonly string[]
}

/** No figure of the trade covers this engine: without a maker's sheet there is no verdict. */
export interface SheetNeeded {
  readonly kind: 'sheet-needed'
  readonly reason: string
}

/** One line of the fit sheet before precedence has decided whose limits count. */
export interface FitLine {
  readonly position: number | null
  readonly title: string
  readonly quantity: Quantity
  readonly measurand: Measurand
  readonly rule: ComputedRule | SheetNeeded
  readonly remedy: { readonly low: RemedyRule | null; readonly high: RemedyRule | null }
}

/** Reads one number of the rule in force. */
export type ParameterReader = (key: string) => number

/**
 * A fit of the trade: what is compared with what, on which engines, by which rule, and where it is judged.
 */
export interface FitDefinition {
  /** Stable; requirements are keyed `fit/position`. */
  readonly key: string
  readonly title: string
  /** What its limits are limits of. Left out: a length. */
  readonly quantity?: Quantity
  readonly critical: boolean
  readonly parameters: readonly FitParameter[]
  /** Operations that judge it: the first that the route has. */
  readonly judgedAt: readonly string[]
  /** The lines for this engine; none where the fit does not occur. */
  readonly lines: (context: FitContext, read: ParameterReader) => readonly FitLine[]
  /**
   * What is settled by one maker's sheet of several: bolts are tightened by torque, by stretch or by angle. Left out, the
   * fit stands alone.
   */
  readonly sheetFamily?: { readonly key: string; readonly title: string }
  /** What else the rule says before metal is cut. */
  readonly findings?: (context: FitContext, read: ParameterReader) => readonly PlanFinding[]
}
