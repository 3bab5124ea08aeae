import type { Found, TestResult, TypedLot, WrittenDown } from '../outbox/written-down.ts'
import type { Finding, OperationSheet } from './operation-sheet.ts'

/** A sheet with what was written down on this device and is not in the service's answer yet. */
export function withWrittenDown(sheet: OperationSheet, work: WrittenDown): OperationSheet {
  if (work.kind === 'lot') return withLot(sheet, work)
  if (work.operationKey !== sheet.operation.key) return sheet
  if (work.kind === 'inspection') return withResult(sheet, work)
  return work.kind === 'finding' ? withFinding(sheet, work) : sheet
}

/** A lot belongs to its part, whichever step shows it. */
function withLot(sheet: OperationSheet, { partId, lot, reason, by, deviceAt: at }: TypedLot): OperationSheet {
  if (!sheet.lots.some((place) => place.partId === partId && place.lot !== lot)) return sheet
  const lots = sheet.lots.map((place) => (place.partId === partId
    ? { ...place, lot, history: [...place.history, { lot, reason, by, at }] }
    : place))
  return { ...sheet, lots }
}

/** The result counts instead of the one before; one that is not sound waits for the owner, as the service will have it. */
function withResult(sheet: OperationSheet, work: TestResult): OperationSheet {
  if (sheet.inspections.some(({ id }) => id === work.id)) return sheet
  const { id, item, title, mark, method, pressure, result, note, by, deviceAt: inspectedAt } = work
  const fresh = {
    id, item, mark, method, pressure, result, note, inspector: work.inspector.name, by, inspectedAt, counts: true, conceded: false,
  }
  const inspections = [...sheet.inspections.map((one) => (one.item === item ? { ...one, counts: false } : one)), fresh]
  if (result === 'no-indication') return { ...sheet, inspections }
  const words = result === 'indication' ? 'shows an indication' : 'not tested'
  return withFinding({ ...sheet, inspections }, { ...work, requirementKey: null, title: `${title}: ${words}`, sentence: note, stops: true })
}

type Raised = Omit<Found, 'kind'>

function withFinding(sheet: OperationSheet, work: Raised): OperationSheet {
  const { id, jobId, jobNumber, operationKey, operationTitle, requirementKey, title, sentence, stops, by, deviceAt } = work
  if (sheet.findings.some((finding) => finding.id === id)) return sheet
  const finding: Finding = {
    id, jobId, jobNumber, engineName: sheet.job.engineName, operationKey, operationTitle, requirementKey,
    source: requirementKey === null ? 'person' : 'judge', title, sentence, stops, state: 'open', raisedBy: by, raisedAt: deviceAt,
    photographs: [], decision: null,
  }
  return { ...sheet, findings: [...sheet.findings, finding] }
}
