import { featureKey } from '../features/feature.ts'
import type { Place } from '../features/feature.ts'
import { indexFeatures, type FeatureIndex } from '../features/feature-index.ts'
import { judge } from '../judging/judge.ts'
import type { Requirement } from '../judging/requirement.ts'
import type { JudgeSettings } from '../judging/settings.ts'
import { defaultJudgeSettings } from '../judging/settings.ts'
import type { Verdict } from '../judging/verdict.ts'
import { measurementsOf } from '../measuring/pass.ts'
import type { Plan } from '../plan/plan-types.ts'
import { assign } from '../selective-assembly/assignment.ts'
import { families, numberOf, type Family } from './families.ts'
import { pairingOf, targetOf } from './pairing-figures.ts'
import { rearranged, type JobAsMeasured } from './rearranged.ts'
import type { Suggestion } from './suggestion-types.ts'
import { featuresOf } from './trial-fit.ts'

/** A tenth of a thousandth of an inch: a gain under it is not worth moving a part. Our own measure, no source. */
const LEAST_GAIN = 2_540

/** What a search for better places works on. */
interface Bench {
  readonly plan: Plan
  readonly job: JobAsMeasured
  readonly index: FeatureIndex
  readonly settings: JudgeSettings
}

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

/** For each place the distance of each part from the target, the worst of all fits that are known for every pair; null without one. */
function costsOf(bench: Bench, family: Family, places: readonly Place[], parts: readonly string[]): number[][] | null {
  const costs = places.map(() => places.map(() => 0))
  let fits = 0
  for (const requirements of fitsOf(bench.plan, family, places)) {
    const distances = places.map(() => places.map((): number | null => null))
    // Every part one place further each time: as many looks as there are places show every pair.
    for (const turn of places.keys()) {
      const partAt = new Map(places.map((place, row) => [place, parts[(row + turn) % places.length] ?? '']))
      requirements.forEach((requirement, row) => {
        const { least, greatest } = judged(bench, family, partAt, requirement)
        const target = targetOf(requirement) ?? 0
        if (least === null || greatest === null) return
        distances[row]![(row + turn) % places.length] = Math.max(Math.abs(least - target), Math.abs(greatest - target))
      })
    }
    if (distances.flat().includes(null)) continue
    fits += 1
    distances.forEach((ofPlace, row) => ofPlace.forEach((distance, column) => {
      costs[row]![column] = Math.max(costs[row]![column] ?? 0, distance ?? 0)
    }))
  }
  return fits === 0 ? null : costs
}

/** For each fit that the places' parts have a share in, its requirement at every one of the places. */
function fitsOf(plan: Plan, { kind }: Family, places: readonly Place[]): Requirement[][] {
  const byFit = new Map<string, Map<Place, Requirement>>()
  for (const requirement of plan.requirements) {
    const features = featuresOf(requirement.measurand)
    const own = features.find(({ place }) => place.startsWith(`${kind}/`))
    const isPairing = features.some(({ place }) => place !== own?.place)
    if (own === undefined || !isPairing || targetOf(requirement) === null) continue
    const ofFit = byFit.get(requirement.fit) ?? new Map<Place, Requirement>()
    byFit.set(requirement.fit, ofFit.set(own.place, requirement))
  }
  return [...byFit.values()]
    .map((ofFit) => places.flatMap((place) => ofFit.get(place) ?? []))
    .filter((requirements) => requirements.length === places.length)
}

function judged(
  { job, index, settings }: Bench, family: Family, partAt: ReadonlyMap<Place, string>, requirement: Requirement,
): Verdict {
  return judge(requirement, rearranged(job, family, partAt, index), index, settings)
}

function whenWorthIt(
  bench: Bench, family: Family, places: readonly Place[], partAt: ReadonlyMap<Place, string>,
): Suggestion | null {
  const { plan, job, index, settings } = bench
  const here = measurementsOf(job.placed, job.passes)
  const there = rearranged(job, family, partAt, index)
  const touched = plan.requirements.filter(({ measurand }) => featuresOf(measurand).some(({ place }) => places.includes(place)))
  const compared = touched.map((requirement) => ({
    requirement,
    before: judge(requirement, here, index, settings),
    after: judge(requirement, there, index, settings),
  }))
  if (compared.some(({ before, after }) => after.kind === 'outside' && before.kind !== 'outside')) return null
  const fits = compared.filter(({ before, after }) => before.least !== null && after.least !== null)
    .filter(({ requirement }) => targetOf(requirement) !== null
      && featuresOf(requirement.measurand).some(({ place }) => !places.includes(place)))
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
  const inPlace = moves.flatMap(({ to }) => [
    ...(family.inHousing === null ? [] : [family.inHousing(numberOf(to)).bore]), ...family.alsoMeasured(numberOf(to)),
  ]).filter((feature) => here.latestPass(feature) !== null)
  return {
    kind: family.kind,
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

function valueIn({ kind, least, greatest }: Verdict) {
  return { kind, least: least ?? 0, greatest: greatest ?? 0 }
}
