import type { PlausibilityInForce } from '@tenths/contract'
import { changeableNumbers, numberAt, numbersWith, starterPlausibilityNumbers, type PlausibilityNumbers, type ShopNumbers } from '@tenths/domain'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

type Change = z.infer<typeof PlausibilityInForce>['groups'][number]['numbers'][number]['changes'][number]

interface Revision extends Omit<Change, 'from' | 'to' | 'at'> {
  readonly revision: number
  readonly own: ShopNumbers
  readonly at: Date
}

/** Every number that the shop sets, by rule, each with who changed it, when and why. */
export async function listNumbers(database: Queryable): Promise<z.infer<typeof PlausibilityInForce>> {
  const { rows: revisions } = await database.query<Revision>(
    `SELECT revision, numbers AS own, reason, person.name AS by, made_at AS at
       FROM plausibility_revision JOIN person ON person.id = made_by
      ORDER BY revision`,
  )
  const inForce = numbersWith(revisions.at(-1)?.own ?? {})
  return {
    revision: revisions.at(-1)?.revision ?? 0,
    groups: changeableNumbers.map(({ key: group, title, words, numbers }) => ({
      key: group, title, words,
      numbers: numbers.map(({ key, title: name, unit }) => ({
        key, title: name, unit,
        value: numberAt(inForce, key), starter: numberAt(starterPlausibilityNumbers, key),
        changes: changesOf(key, revisions),
      })),
    })),
  }
}

function changesOf(key: string, revisions: readonly Revision[]): Change[] {
  const changes: Change[] = []
  let before: PlausibilityNumbers = starterPlausibilityNumbers
  for (const { own, reason, by, at } of revisions) {
    const after = numbersWith(own)
    const [from, to] = [numberAt(before, key), numberAt(after, key)]
    if (from !== to) changes.unshift({ from, to, reason, by, at: at.toISOString() })
    before = after
  }
  return changes
}
