import { partOfPlace, type Inspection, type Observation, type Operation, type Place } from '@tenths/domain'
import type { Evidence, LatestInspection } from './evidence.ts'

type Known = Pick<Evidence, 'placed' | 'inspections' | 'observations'>

/** What the areas of a step still lack: a result for the part that sits there, or a sound one. */
export interface Tests {
  /** No result yet, or only one of a part that no longer sits there. */
  readonly untested: readonly Inspection[]
  /** The latest result is not *no indication*, and the owner has not let it pass. */
  readonly unsound: readonly Inspection[]
}

/** Where the tests of one operation stand. */
export function testsOf(operation: Operation, evidence: Known): Tests {
  const areas = (operation.inspections ?? []).map((area) => ({ area, latest: countingFor(operation, area, evidence) }))
  return {
    untested: areas.filter(({ latest }) => latest === null).map(({ area }) => area),
    unsound: areas
      .filter(({ latest }) => latest !== null && latest.result !== 'no-indication' && !latest.conceded)
      .map(({ area }) => area),
  }
}

/**
 * The result that counts for an area: the latest of the part that sits there now, wherever that part was tested; where
 * no part is tracked, the latest of the area itself.
 */
export function countingFor(operation: Operation, area: Inspection, { placed, inspections }: Known): LatestInspection | null {
  const now = placed.find(({ place }) => place === area.place)?.partId ?? null
  return inspections.find(({ operationKey, item, partId }) => operationKey === operation.key
    && (now === null ? item === area.key : partId === now && kindOfArea(item) === kindOfArea(area.key))) ?? null
}

/** `rod-3` and `rod-5` are the same area of two parts: a rod that moves takes its result with it. */
function kindOfArea(key: string): string {
  return key.replaceAll(/\d+/g, '#')
}

/** Ids of all results of the job that count. */
export function countingInspections(evidence: Evidence): Set<string> {
  return new Set(evidence.plan.operations.flatMap((operation) =>
    (operation.inspections ?? []).flatMap((area) => countingFor(operation, area, evidence)?.id ?? [])))
}

/** Things not ticked as seen or not applicable, or without what they ask for. */
export function unseenOf(operation: Operation, { observations }: Known): Observation[] {
  const ticks = new Map(observations
    .filter(({ operationKey }) => operationKey === operation.key)
    .map((tick) => [tick.item, tick]))
  return operation.observations.filter(({ key, asks }) => {
    const tick = ticks.get(key)
    if (tick === undefined || tick.outcome === 'not-seen') return true
    if (tick.outcome === 'not-applicable' || asks === undefined) return false
    return asks.kind === 'words' ? tick.note === '' : tick.since === null
  })
}

/** Places of the step whose part has no lot or serial yet. A place where nothing sits asks for nothing. */
export function lotlessOf(operation: Operation, { placed }: Known): Place[] {
  const lots = new Map(placed.map(({ place, lot }) => [place, lot]))
  return (operation.lots ?? []).filter((place) => lots.get(place) === '')
}

/** Places by kind of part, as one reads them out: “piston 1, 2, 3”. */
export function placesInWords(places: readonly Place[]): string[] {
  const parts = places.map(partOfPlace)
  return [...new Set(parts.map(({ kind }) => kind))].map((kind) => {
    const numbers = parts.flatMap((part) => (part.kind === kind ? part.number ?? [] : []))
    return `${kind.replaceAll('-', ' ')}${numbers.length === 0 ? '' : ` ${numbers.join(', ')}`}`
  })
}
