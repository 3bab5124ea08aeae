import type { FeatureDefinition } from '@tenths/domain'
import { featureKey, pointKey } from '@tenths/domain'
import type { Cell } from '../grid/cells.ts'
import type { BenchWork } from '../outbox/bench-work.ts'
import type { OutboxEntry } from '../outbox/outbox-entry.ts'
import { isOfReading, type TypedReading } from '../outbox/typed-reading.ts'
import { countingReadings } from '../readings/counting.ts'
import { passesOf } from '../readings/passes.ts'
import type { OperationSheet, Pass, Reading } from './operation-sheet.ts'

// A key press asks every cell for its value: each of these is built once for a value, not once for a cell.

export function cellsByKey(cells: readonly Cell[]): ReadonlyMap<string, Cell> {
  return new Map(cells.map((cell) => [cell.key, cell]))
}

/** All passes of each feature's part, by the feature's key, the first one first. */
export function passesByFeature(
  sheet: Pick<OperationSheet, 'placed'>, passes: readonly Pass[], features: readonly FeatureDefinition[],
): ReadonlyMap<string, readonly Pass[]> {
  return new Map(features.map((feature) => [featureKey(feature), passesOf(sheet, passes, feature)]))
}

/**
 * The latest pass of each feature that was taken at one step; none for a feature that is to be measured again, because
 * somebody asked for it or because the gauge had drifted.
 */
export function openPasses(
  taken: ReadonlyMap<string, readonly Pass[]>, operationKey: string, again: ReadonlySet<string>,
): ReadonlyMap<string, Pass> {
  return new Map([...taken].flatMap(([key, passes]) => {
    const open = again.has(key) ? undefined : passes.findLast((pass) => pass.operationKey === operationKey)
    return open === undefined || open.isVoid ? [] : [[key, open] as const]
  }))
}

/** The reading that counts in each cell, by the cell's key. */
export function readingsByCell(
  open: ReadonlyMap<string, Pass>, features: readonly FeatureDefinition[],
): ReadonlyMap<string, Reading> {
  return new Map(features.flatMap((feature) =>
    countingReadings(open.get(featureKey(feature))?.readings ?? [])
      .map((reading) => [pointKey(feature, reading.point), reading] as const)))
}

/** The cells in which the values among some work were typed. */
export function cellsOf(work: readonly OutboxEntry<BenchWork>[]): ReadonlySet<string> {
  return new Set(work.filter(isOfReading).map(({ content }) => content.cell))
}

/** The value typed in each cell among some work; the earliest, where there are several. */
export function typedByCell(work: readonly OutboxEntry<BenchWork>[]): ReadonlyMap<string, OutboxEntry<TypedReading>> {
  return new Map(work.filter(isOfReading).toReversed().map((entry) => [entry.content.cell, entry]))
}

/** The text of each typed value. */
export function textsByCell(typed: ReadonlyMap<string, OutboxEntry<TypedReading>>): ReadonlyMap<string, string> {
  return new Map([...typed].map(([cell, { content }]) => [cell, content.reading.typed]))
}
