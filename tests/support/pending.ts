import { randomUUID } from 'node:crypto'
import { read, send, type OperationPage, type TestJob } from './floor.ts'
import type { TestShop } from './shop.ts'
import type { Who } from './stock.ts'

export const markedAt = '2030-03-04T15:06:07.000Z'

/** What a bench without a network sends of a step that it marked as signed, from the page as it saw it. */
export function markOf(shop: TestShop, page: OperationPage, signers: readonly Who[] = ['machinist']) {
  const latest = page.passes.filter(({ partId, feature, number }) =>
    !page.passes.some((other) => other.partId === partId && other.feature === feature && other.number > number))
  const superseded = new Set(page.passes.flatMap(({ readings }) => readings.map(({ supersedes }) => supersedes)))
  const partAt = new Map(page.placed.map(({ place, partId }) => [place, partId]))
  const recorded = page.operation.features.flatMap(({ place, feature }) =>
    latest.find((pass) => pass.partId === partAt.get(place) && pass.feature === feature)?.readings ?? [])
  return {
    id: randomUUID(), operationKey: page.operation.key, definitionHash: page.definitionHash,
    signedBy: shop.people[signers[0]!].id, signers: signers.map((who) => shop.people[who].id),
    readings: [...new Set([
      ...page.verdicts.flatMap(({ readings }) => readings), ...recorded.map(({ id }) => id).filter((id) => !superseded.has(id)),
    ])],
    deviceAt: markedAt, deviceOffset: 0,
  }
}

/** Marks a step as signed without a network, by whoever is to confirm it; gives the mark's id. */
export async function mark(shop: TestShop, job: TestJob, operationKey: string, signers: readonly Who[] = ['machinist']): Promise<string> {
  const body = markOf(shop, await read(shop, job, operationKey), signers)
  await send(shop, `/api/jobs/${job.id}/pending-sign-offs`, body, signers[0]!).expect(201)
  return body.id
}
