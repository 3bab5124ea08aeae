import { featureKey } from '../features/feature.ts'
import type { Place } from '../features/feature.ts'
import { indexFeatures } from '../features/feature-index.ts'
import { judge } from '../judging/judge.ts'
import type { JudgeSettings } from '../judging/settings.ts'
import { defaultJudgeSettings } from '../judging/settings.ts'
import type { Verdict } from '../judging/verdict.ts'
import type { Requirement } from '../judging/requirement.ts'
import { measurementsOf } from '../measuring/pass.ts'
import type { Plan } from '../plan/plan-types.ts'
import { assign } from '../selective-assembly/assignment.ts'
import { families, numberOf, type Family } from './families.ts'
import { costsOf, judged, type Bench } from './pairing-costs.ts'
import { pairingOf, targetOf } from './pairing-figures.ts'
import { rearranged, type JobAsMeasured } from './rearranged.ts'
import type { Suggestion } from './suggestion-types.ts'
import { featuresOf } from './trial-fit.ts'

/** A tenth of a thousandth of an inch: a gain under it is not worth moving a part. Our own measure, no source. */
const LEAST_GAIN = 2_540

/**
 * Which parts would fit better in other places, from measured values alone: pistons to bores, pins to pistons, shells to
 * journals. Each suggestion has the least worst distance from target, then the least sum, then the fewest moves. It is made
 * where it takes a fit out of *outside* or brings the worst one nearer by a tenth at least, and never where it would push
 * another fit outside.
 * @param stillToCut features that a step ahead will cut, by `featureKey`: who is honed to his mate needs no other place
 * @throws DomainError as `judge`
 * @formula selective-assembly
 */
export function suggestions(
  plan: Plan, job: JobAsMeasured, stillToCut: ReadonlyMap<string, string> = new Map(),
  settings: JudgeSettings = defaultJudgeSettings,
): readonly Suggestion[] {
  const bench = { plan, job, index: indexFeatures(plan.features), settings }
  return families.flatMap((family) => suggestionFor(bench, family, stillToCut) ?? [])
}

function suggestionFor(bench: Bench, family: Family, stillToCut: ReadonlyMap<string, string>): Suggestion | null {
  const { plan, job } = bench
  const ready = plan.requirements.filter((requirement) => requirement.fit === family.fit
    && targetOf(requirement) !== null
    && featuresOf(requirement.measurand).every((feature) => !stillToCut.has(featureKey(feature))))
  const known = ready.filter((requirement) => judged(bench, family, new Map(), requirement).least !== null)
  const places = known.map(({ position }) => `${family.kind}/${position}`)
  const partNow = new Map(job.placed.map(({ place, partId }) => [place, partId]))
  const parts = places.map((place) => partNow.get(place) ?? '')
  if (places.length < 2 || parts.includes('')) return null

  const costs = costsOf(bench, family, places, parts)
  if (costs === null) return null
  const { columns } = assign(costs)
  const partAt = new Map(places.map((place, row) => [place, parts[columns[row] ?? row] ?? '']))
  const moved = places.filter((place, row) => partAt.get(place) !== parts[row])
  return moved.length === 0 ? null : whenWorthIt(bench, family, places, partAt)
}

function whenWorthIt(
  bench: Bench, family: Family, places: readonly Place[], partAt: ReadonlyMap<Place, string>,
): Suggestion | null {
  const { plan, job, index, settings } = bench
  const here = measurementsOf(job.placed, job.passes)
  const there = rearranged(job, family, partAt, index)
  const compared = plan.requirements.map((requirement) => ({
    requirement,
    before: judge(requirement, here, index, settings),
    after: judge(requirement, there, index, settings),
  }))
  if (compared.some(({ before, after }) => after.kind === 'outside' && before.kind !== 'outside')) return null
  const fits = compared.filter(({ requirement, before, after }) => before.least !== null && after.least !== null
    && targetOf(requirement) !== null && isPairing(requirement, places))
  const before = pairingOf(fits.map((fit) => ({ requirement: fit.requirement, verdict: fit.before })))
  const after = pairingOf(fits.map((fit) => ({ requirement: fit.requirement, verdict: fit.after })))
  const isGain = after.outside < before.outside || before.worstDistance - after.worstDistance >= LEAST_GAIN
  if (!isGain) return null

  const placeNow = new Map(job.placed.map(({ place, partId }) => [partId, place]))
  const moves = [...partAt].flatMap(([to, partId]) => {
    const from = placeNow.get(partId)
    return from === undefined || from === to ? [] : [{ partId, from, to }]
  })
  const lost = compared.filter((one) => one.before.kind !== 'not-measured' && one.after.kind === 'not-measured')
  const inPlace = moves.flatMap(({ to }) => (family.inHousing === null ? [] : [family.inHousing(numberOf(to)).bore]))
  return {
    kind: family.kind,
    title: family.title,
    moves,
    fits: fits.map(({ requirement, before: was, after: is }) => ({
      requirement: requirement.key, title: requirement.title, before: valueIn(was), after: valueIn(is),
    })),
    before,
    after,
    measureAgain: [
      ...lost.map(({ requirement }) => requirement.title),
      ...inPlace.flatMap(({ place, feature }) => index.get(place)?.get(feature)?.title ?? []),
    ],
  }
}

/** Whether the requirement compares a part in one of these places with one that stays. */
function isPairing({ measurand }: Requirement, places: readonly Place[]): boolean {
  if (measurand.kind === 'apart') return false
  const moving = featuresOf(measurand).map(({ place }) => places.includes(place))
  return moving.includes(true) && moving.includes(false)
}

function valueIn({ kind, least, greatest }: Verdict) {
  return { kind, least: least ?? 0, greatest: greatest ?? 0 }
}
