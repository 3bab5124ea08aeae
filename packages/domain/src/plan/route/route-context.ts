import type { BobweightRule } from '../../balance/bobweight-rule.ts'
import type { ShortBlockFeatures } from '../../features/short-block/all.ts'
import type { TopEndFeatures } from '../../features/top-end/all.ts'
import type { FitContext } from '../../fits/fit-definition.ts'
import type { OilGroove } from '../../rings/oil-groove.ts'
import type { Operation } from '../plan-types.ts'
import type { WorkScope } from './work-scope.ts'

/** What decides the steps of a route. */
export interface RouteContext extends FitContext {
  readonly scope: WorkScope
  readonly features: ShortBlockFeatures & TopEndFeatures
  readonly oilGroove: OilGroove
  /** How bobweights are made up for this engine; null where its crank is spun bare. */
  readonly bobweights: BobweightRule | null
  /** A fillet against which some shell is not known to be clear. */
  readonly filletDoubt: boolean
}

/**
 * A step before it is known where requirements are judged; `after` may name steps that this route leaves
 * out.
 */
export type OperationDraft = Omit<Operation, 'requirements'>

/**
 * A step that this route does not have, and what stood before it: who comes after it follows those instead.
 */
export interface LeftOut {
  readonly key: string
  readonly after: readonly string[]
}

/** The steps of one stage, present or left out. */
export interface StageRoute {
  readonly steps: readonly OperationDraft[]
  readonly leftOut: readonly LeftOut[]
}
