import type { BenchWork } from '../outbox/bench-work.ts'
import type { OutboxEntry } from '../outbox/outbox-entry.ts'
import type { Pass } from './operation-sheet.ts'

/** Keys of the outbox entries whose readings the service's answer holds. */
export function settled(outgoing: readonly OutboxEntry<BenchWork>[], passes: readonly Pass[]): readonly string[] {
  const known = new Set(passes.flatMap(({ readings }) => readings.map(({ id }) => id)))
  return outgoing
    .filter(({ state, content }) => state === 'stored' && content.kind === 'reading' && known.has(content.reading.id))
    .map(({ key }) => key)
}
