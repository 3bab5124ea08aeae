import type { BenchWork } from './bench-work.ts'
import type { OutboxEntry } from './outbox-entry.ts'

/** A refused entry of one kind. */
export type RefusedOf<Kind extends BenchWork['kind']> = OutboxEntry<Extract<BenchWork, { kind: Kind }>>

/** What was refused of one kind and is about this: saying it anew takes its place. */
export function refusedAt<Kind extends BenchWork['kind']>(
  refused: readonly OutboxEntry<BenchWork>[], kind: Kind, is: (work: Extract<BenchWork, { kind: Kind }>) => boolean,
): RefusedOf<Kind> | null {
  const entries = refused.filter((entry): entry is RefusedOf<Kind> => entry.content.kind === kind)
  return entries.find(({ content }) => is(content)) ?? null
}
