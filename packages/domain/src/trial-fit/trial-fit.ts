import type { FeatureDefinition, FeatureReference } from '../features/feature.ts'
import { featureKey } from '../features/feature.ts'
import { featureOf, indexFeatures } from '../features/feature-index.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import { countedPass } from '../judging/counted-pass.ts'
import { cutMoves } from '../judging/cut-direction.ts'
import { judge } from '../judging/judge.ts'
import type { Measurand, RemedyRule, Requirement } from '../judging/requirement.ts'
import { sayValue } from '../judging/say-value.ts'
import { defaultJudgeSettings } from '../judging/settings.ts'
import type { JudgeSettings } from '../judging/settings.ts'
import type { FeaturePass, Measurements } from '../measuring/pass.ts'
import type { Plan } from '../plan/plan-types.ts'
import { assumedValue } from './assumed-values.ts'
import type { Verdict } from '../judging/verdict.ts'
import { fitStandings } from './trial-fit-types.ts'
import type { FitStanding, ForecastBasis, TrialFit, TrialFitContext, TrialFitLine } from './trial-fit-types.ts'

/** From the file in hand to a part on order: common practice, no source. */
const remedyRanks: Record<RemedyRule['action'], number> = {
  advise: 0, investigate: 1, file: 2, 'thinner-shell': 3, 'thicker-shell': 3, shim: 3, lighten: 3, hone: 4, face: 5, deck: 6, grind: 7,
  replace: 8,
}

const nothingElseKnown: TrialFitContext = { stillToCut: new Map(), isConceded: () => false }

/**
 * Forecasts every fit of the sheet from what is measured, and from the drawing for the rest, before metal is cut: what will
 * not go together, and the cheapest way out first.
 * @throws DomainError as `judge`
 */
export function trialFit(
  plan: Plan, measurements: Measurements, settings: JudgeSettings = defaultJudgeSettings,
  context: TrialFitContext = nothingElseKnown,
): TrialFit {
  const index = indexFeatures(plan.features)
  const completed = new CompletedMeasurements(plan, measurements, index)
  const lines = plan.requirements
    .map((requirement) => forecastLine(requirement, completed, index, settings, context))
    .sort((one, other) => order(one) - order(other) || (one.remedyRank ?? 9) - (other.remedyRank ?? 9))
  const counts = Object.fromEntries(fitStandings.map((standing) =>
    [standing, lines.filter((line) => line.standing === standing).length])) as Record<FitStanding, number>
  return { lines, counts }
}

function order({ standing }: TrialFitLine): number {
  return fitStandings.indexOf(standing)
}

function forecastLine(
  requirement: Requirement, completed: CompletedMeasurements, index: FeatureIndex, settings: JudgeSettings,
  { stillToCut, isConceded }: TrialFitContext,
): TrialFitLine {
  const features = featuresOf(requirement.measurand)
  const states = features.map((reference) => completed.standingOf(reference))
  const assumedKeys = features.filter((_, at) => states[at] === 'nominal')
  const judged = assumedKeys.length === 0 ? requirement : { ...requirement, guard: { kind: 'none' } as const }
  // A form needs readings: a drawing's bore is round and straight by definition, which forecasts nothing.
  const isForm = requirement.measurand.kind === 'feature' && assumedKeys.length > 0
    && ['range', 'out-of-round', 'taper'].includes(requirement.measurand.reducer)
  const verdict = judge(judged, isForm ? completed.measured : completed, index, settings)
  const basis = isForm ? 'unknown' : basisOf(states)
  const cutAt = verdict.kind === 'outside' ? cuttingStep(requirement, verdict, index, stillToCut) : null
  const action = verdict.remedy?.action as RemedyRule['action'] | undefined
  return {
    requirement: requirement.key,
    title: requirement.title,
    position: requirement.position,
    standing: standingOf(verdict, basis, cutAt, isConceded),
    basis,
    verdict,
    assumed: isForm ? [] : assumedKeys.map((reference) => {
      const definition = featureOf(index, reference)
      return `${definition.title}: ${sayValue(completed.assumed(definition) ?? 0, definition.quantity, settings.unit)} nominal`
    }),
    remedyRank: action === undefined ? null : remedyRanks[action],
    cutAt,
  }
}

function standingOf(
  verdict: Verdict, basis: ForecastBasis, cutAt: string | null, isConceded: TrialFitContext['isConceded'],
): FitStanding {
  const conceded = basis === 'measured' && isConceded(verdict)
  if (verdict.kind === 'outside' && !conceded) return cutAt === null ? 'conflict' : 'to-be-cut'
  if (basis !== 'measured' || verdict.kind === 'not-measured') return 'not-measured'
  return verdict.kind === 'not-proven' && !conceded ? 'not-proven' : 'fits'
}

/** The step ahead that takes metal off one of the fit's features, if that moves the value towards its limits. */
function cuttingStep(
  requirement: Requirement, { side }: Verdict, index: FeatureIndex, stillToCut: TrialFitContext['stillToCut'],
): string | null {
  if (side !== 'low' && side !== 'high') return null
  const needed = side === 'low' ? 'up' : 'down'
  for (const feature of featuresOf(requirement.measurand)) {
    const step = stillToCut.get(featureKey(feature))
    const effect = step === undefined ? null : cutMoves(requirement, { action: 'hone', feature, words: '' }, needed, index)
    if (step !== undefined && effect?.direction === needed) return step
  }
  return null
}

type Standing = 'measured' | 'nominal' | 'unknown'

function basisOf(states: readonly Standing[]): ForecastBasis {
  if (states.includes('unknown')) return 'unknown'
  if (!states.includes('nominal')) return 'measured'
  return states.includes('measured') ? 'partly-nominal' : 'nominal'
}

/** Every feature a measurand rests on. */
export function featuresOf(measurand: Measurand): readonly FeatureReference[] {
  switch (measurand.kind) {
    case 'feature': return [measurand.feature]
    case 'clearance': return [measurand.hole, measurand.shaft]
    case 'sum': return measurand.terms.map(({ feature }) => feature)
    case 'apart': return [measurand.feature, ...measurand.set]
  }
}

/** Measurements in which the drawing speaks for whatever has no full pass. */
class CompletedMeasurements implements Measurements {
  readonly measured: Measurements
  private readonly plan: Plan
  private readonly index: FeatureIndex
  private readonly standing = new Map<string, Standing>()

  constructor(plan: Plan, measured: Measurements, index: FeatureIndex) {
    this.plan = plan
    this.measured = measured
    this.index = index
  }

  partAt(place: string): string | null {
    return this.measured.partAt(place) ?? place
  }

  standingOf(reference: FeatureReference): Standing {
    const key = featureKey(reference)
    const known = this.standing.get(key)
    if (known !== undefined) return known
    const found = this.findStanding(reference)
    this.standing.set(key, found)
    return found
  }

  latestPass(reference: FeatureReference): FeaturePass | null {
    const standing = this.standingOf(reference)
    if (standing === 'measured') return this.measured.latestPass(reference)
    const definition = featureOf(this.index, reference)
    const value = standing === 'nominal' ? this.assumed(definition) : null
    return value === null ? null : this.nominalPass(definition, value)
  }

  assumed(definition: FeatureDefinition): number | null {
    return assumedValue(this.plan, definition, this.measured)
  }

  private findStanding(reference: FeatureReference): Standing {
    if (countedPass(reference, this.measured, this.index).kind === 'counted') return 'measured'
    return this.assumed(featureOf(this.index, reference)) === null ? 'unknown' : 'nominal'
  }

  private nominalPass(definition: FeatureDefinition, value: number): FeaturePass {
    return {
      partId: this.partAt(definition.place) ?? definition.place,
      feature: definition.feature,
      number: 0,
      standardUncertainty: 0,
      state: definition.state,
      setOn: null,
      readings: definition.points.map(({ key }) => ({ id: `nominal:${featureKey(definition)}@${key}`, point: key, value })),
    }
  }
}
