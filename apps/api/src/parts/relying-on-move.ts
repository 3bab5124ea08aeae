import type { PlacedPart } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import type { Standing } from '../judging/standing.ts'
import type { LiveSignOff } from '../re-opening/re-open.ts'
import { relyingOnParts } from '../re-opening/relying.ts'

/** Where the parts of a job sat, where they sit, and how its steps stand with them there. */
export interface Moved {
  readonly jobId: string
  readonly before: readonly PlacedPart[]
  readonly after: readonly PlacedPart[]
  readonly standings: readonly Standing[]
}

/** The live sign-offs that do not hold for parts that sit elsewhere: those that relied on them where they sat. */
export async function relyingOnMove(
  database: Queryable, { jobId, before, after, standings }: Moved,
): Promise<LiveSignOff[]> {
  const moved = movedParts(before, after)
  const places = new Set([...before, ...after].filter(({ partId }) => moved.has(partId)).map(({ place }) => place))
  return relyingOnParts(database, jobId, [...moved], unsettled(standings, places))
}

/** Where the parts sit after some of them changed places among themselves. */
export function placedAfter<Placed extends PlacedPart>(
  placed: readonly Placed[], moves: readonly { readonly partId: string; readonly to: string }[],
): Placed[] {
  const places = new Map(moves.map(({ partId, to }) => [partId, to]))
  return placed.map((one) => ({ ...one, place: places.get(one.partId) ?? one.place }))
}

/** Steps that put a part into one of these places for good, or whose tests are not of the parts that sit there now. */
function unsettled(standings: readonly Standing[], places: ReadonlySet<string>): string[] {
  return standings
    .filter(({ operation, tests }) => tests.untested.length + tests.unsound.length > 0
      || operation.lots?.some((place) => places.has(place)))
    .map(({ operation }) => operation.key)
}

/** Parts that sit elsewhere than before, those that were pushed out included. */
function movedParts(before: readonly PlacedPart[], after: readonly PlacedPart[]): ReadonlySet<string> {
  const now = new Map(after.map(({ partId, place }) => [partId, place]))
  return new Set(before.filter(({ partId, place }) => now.get(partId) !== place).map(({ partId }) => partId))
}
