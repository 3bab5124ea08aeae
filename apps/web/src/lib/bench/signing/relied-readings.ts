import type { BenchSheet } from '../sheet/bench-sheet.svelte.ts'
import { countingReadings } from '../readings/counting.ts'
import { latestPass } from '../readings/passes.ts'

/** Ids of all that a signature on this step rests on: the readings of each verdict, mates included, and of what is only recorded. */
export function reliedReadings({ answer, passes, features, verdicts }: Pick<BenchSheet, 'answer' | 'passes' | 'features' | 'verdicts'>): string[] {
  const recorded = features.flatMap((feature) => countingReadings(latestPass(answer, passes, feature)?.readings ?? []))
  return [...new Set([...verdicts.flatMap(({ readings }) => readings), ...recorded.map(({ id }) => id)])]
}
