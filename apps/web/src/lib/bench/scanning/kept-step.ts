import type { BenchWork } from '../outbox/bench-work.ts'
import type { OperationSheet } from '../sheet/operation-sheet.ts'
import { withWork } from '../sheet/with-work.ts'

/**
 * The step that a tag leads to as far as the device knows it: of the job's sheets that it keeps, the one looked at last
 * that is neither signed nor marked as signed, sooner one that can begin; of a part only those that measure it where it sits.
 * @param sheets of one job, the one looked at last first
 * @param work what was done on this device and has not arrived
 * @param mark of the part, in capitals or not; null for the job's own tag
 */
export function keptStep(sheets: readonly OperationSheet[], work: readonly BenchWork[], mark: string | null): OperationSheet['operation'] | null {
  const open = sheets.map((sheet) => withWork(sheet, work))
    .filter(({ state, pending }) => state !== 'signed' && pending.every((one) => one.state !== 'to-confirm'))
    .filter((sheet) => mark === null || measures(sheet, mark))
  const begun = open.find(({ waitsFor }) => waitsFor.every(({ marked }) => marked))
  return (begun ?? open[0])?.operation ?? null
}

function measures({ operation, placed }: OperationSheet, mark: string): boolean {
  const place = placed.find((part) => part.mark.toLowerCase() === mark.toLowerCase())?.place
  return operation.features.some((feature) => feature.place === place)
}
