import { DomainError } from '../errors.ts'
import { bobweightRule } from '../balance/bobweight-rule.ts'
import { validateCombination } from '../engine/validate-parts.ts'
import { featureKey } from '../features/feature.ts'
import type { FeatureDefinition } from '../features/feature.ts'
import { shortBlockFeatures } from '../features/short-block/all.ts'
import { topEndFeatures } from '../features/top-end/all.ts'
import { crankUnbalanceFit } from '../fits/crank-unbalance.ts'
import { fits } from '../fits/index.ts'
import type { FitContext, FitDefinition } from '../fits/fit-definition.ts'
import { requirementsOfFit } from '../fits/requirements-of-fit.ts'
import { ruleInForce } from '../fits/rule-in-force.ts'
import { orientations } from '../layout/orientation.ts'
import type { Requirement } from '../judging/requirement.ts'
import { oilGroove } from '../rings/oil-groove.ts'
import { filletCases, filletFindings } from './findings/fillet.ts'
import { geometryFindings } from './findings/geometry.ts'
import { oilGrooveFindings } from './findings/oil-groove.ts'
import { sheetsNeeded } from './findings/sheets-needed.ts'
import type { Operation, Plan, PlanInput } from './plan-types.ts'
import type { OperationDraft, RouteContext } from './route/route-context.ts'
import { routeOf } from './route/route.ts'
import { optionsOf, scopeOf } from './route/work-scope.ts'

/** The crank's greatest end play where nobody limits it: 0.010 in, from memory. */
const GREATEST_END_PLAY = 254_000

/**
 * Fit sheet and route of one engine: a pure function of its input.
 * @throws DomainError `engine-impossible` for an engine that cannot exist, `rule-unknown` for a rule or
 *   sheet of a fit that is not there, or a number that its fit does not have
 */
export function plan(input: PlanInput): Plan {
  validateCombination(input.engine, input.parts)
  requireKnownFits(input)
  const { engine, parts } = input
  const orientation = orientations(engine)
  const groove = oilGroove(parts.piston)
  const context: FitContext = {
    engine,
    parts,
    duty: input.duty,
    options: optionsOf(input),
    cylinders: orientation,
    gasketThickness: parts.gasketThickness ?? null,
    supportRail: groove.state === 'broken',
    sheets: new Set(input.sheets.map(({ fit }) => fit)),
  }
  const results = fits.map((fit) => ({
    fit,
    ...requirementsOfFit(fit, context, input.rules, input.sheets),
  }))
  const scope = scopeOf(input.work)
  const fillets = filletCases(engine, parts, greatestEndPlay(results.flatMap((result) => result.requirements)))
  const features = { ...shortBlockFeatures(engine, parts, orientation), ...topEndFeatures(engine) }
  const drafts = routeOf({
    ...context,
    scope,
    features,
    oilGroove: groove,
    bobweights: bobweightRule(context, ruleInForce(crankUnbalanceFit, input.rules)),
    filletDoubt: fillets.some(({ room }) => room.state === 'unknown'),
  })
  const judged = results.filter(({ fit }) => judgingOperation(fit, drafts) !== undefined)
  const requirements = judged.flatMap((result) => result.requirements)
  const operations = withRequirements(drafts, requirements)
  return {
    input,
    features: measuredFeatures(features, operations),
    requirements,
    operations,
    findings: [
      // How parts go together matters where they are put together.
      ...(scope.assembled
        ? [
            ...filletFindings(fillets),
            ...oilGrooveFindings(groove, parts),
            ...geometryFindings(engine, parts),
          ]
        : []),
      ...judged.flatMap((result) => result.findings),
      ...sheetsNeeded(judged.map(({ fit, sheetReasons }) => ({ fit, reasons: sheetReasons })), input.sheets),
    ],
    orientation,
  }
}

function requireKnownFits({ rules, sheets }: PlanInput): void {
  const known = new Set(fits.map(({ key }) => key))
  for (const { fit } of [...rules, ...sheets]) {
    if (!known.has(fit)) throw new DomainError('rule-unknown', `There is no fit “${fit}”.`, fit)
  }
}

function greatestEndPlay(requirements: readonly Requirement[]): number {
  return requirements.find(({ fit }) => fit === 'crank-end-play')?.limits.high ?? GREATEST_END_PLAY
}

/** The first of a fit's operations that the route has; a fit that is judged nowhere does not apply. */
function judgingOperation(
  { judgedAt }: FitDefinition,
  drafts: readonly OperationDraft[],
): string | undefined {
  return judgedAt.find((key) => drafts.some((draft) => draft.key === key))
}

/** Each requirement goes to the operation that judges its fit. */
function withRequirements(
  drafts: readonly OperationDraft[],
  requirements: readonly Requirement[],
): readonly Operation[] {
  const judgedAt = new Map(fits.map((fit) => [fit.key, judgingOperation(fit, drafts)]))
  return drafts.map((draft) => ({
    ...draft,
    requirements: requirements.filter(({ fit }) => judgedAt.get(fit) === draft.key).map(({ key }) => key),
  }))
}

/** The features that some operation measures, in the order of the route. */
function measuredFeatures(
  all: RouteContext['features'],
  operations: readonly Operation[],
): readonly FeatureDefinition[] {
  const definitions = new Map(
    Object.values<readonly FeatureDefinition[]>({ ...all })
      .flat()
      .map((definition) => [featureKey(definition), definition]),
  )
  const measured = new Set(operations.flatMap(({ features }) => features.map(featureKey)))
  return [...measured].flatMap((key) => definitions.get(key) ?? [])
}
