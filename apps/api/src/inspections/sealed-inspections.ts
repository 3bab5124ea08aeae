import type { Operation } from '@tenths/domain'
import type { Evidence } from '../judging/evidence.ts'
import { countingFor } from '../judging/tested.ts'

/** A result as it is sealed: with which method, on which part, and who says so. */
export interface SealedInspection {
  readonly id: string
  readonly item: string
  readonly title: string
  readonly part: string | null
  readonly method: string
  readonly pressure: number | null
  readonly result: string
  readonly note: string
  readonly inspector: string
  readonly person: string
}

/** The results of an operation that count, in the order of its areas. */
export function sealedInspections(operation: Operation, evidence: Evidence): SealedInspection[] {
  return (operation.inspections ?? []).flatMap((area) => {
    const latest = countingFor(operation, area, evidence)
    if (latest === null) return []
    const { id, partId, method, pressure, result, note, inspectorId, personId } = latest
    return [{
      id, item: area.key, title: area.title, part: partId, method, pressure, result, note, inspector: inspectorId,
      person: personId,
    }]
  })
}
