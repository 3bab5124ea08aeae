import type { Place } from '../features/feature.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import { judge } from '../judging/judge.ts'
import type { Requirement } from '../judging/requirement.ts'
import type { JudgeSettings } from '../judging/settings.ts'
import type { Verdict } from '../judging/verdict.ts'
import type { Plan } from '../plan/plan-types.ts'
import type { Family } from './families.ts'
import { targetOf } from './pairing-figures.ts'
import { rearranged, type JobAsMeasured } from './rearranged.ts'
import { featuresOf } from './trial-fit.ts'

/** What a search for better places works on. */
export interface Bench {
  readonly plan: Plan
  readonly job: JobAsMeasured
  readonly index: FeatureIndex
  readonly settings: JudgeSettings
}

/**
 * For each place the distance of each part from the target, the worst of all fits that are known for every pair; null
 * without one.
 */
export function costsOf(bench: Bench, family: Family, places: readonly Place[], parts: readonly string[]): number[][] | null {
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
    // A set that is matched stays so wherever its parts sit.
    if (requirement.measurand.kind === 'apart') continue
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

/** The verdict on a requirement with these parts in other places. */
export function judged(
  { job, index, settings }: Bench, family: Family, partAt: ReadonlyMap<Place, string>, requirement: Requirement,
): Verdict {
  return judge(requirement, rearranged(job, family, partAt, index), index, settings)
}
