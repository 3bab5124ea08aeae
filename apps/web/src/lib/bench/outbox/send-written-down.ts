import { keepPhotograph, raiseFinding, recordInspections, setLots } from '@tenths/contract'
import { call, type AnswerOf, type CallSettings } from '../../api/call.ts'
import { base64Of } from '../../photographs/shrink.ts'
import type { Found, Photographed, TestResult, TypedLot, WrittenDown } from './written-down.ts'

/**
 * Sends what was written down beside values and ticks.
 * @returns the steps that are open again because of it
 * @throws ProblemError as `call` does
 */
export async function sendWrittenDown(work: WrittenDown, settings: CallSettings): Promise<AnswerOf<typeof setLots>['reopened']> {
  if (work.kind === 'inspection') return (await sendResult(work, settings)).reopened
  if (work.kind === 'lot') return (await sendLot(work, settings)).reopened
  if (work.kind === 'finding') await sendFinding(work, settings)
  else await sendPhotograph(work, settings)
  return []
}

function sendResult(work: TestResult, settings: CallSettings) {
  const { personId, jobId, operationKey, behind, id, item, method, pressure, result, note, inspector, deviceAt } = work
  const results = [{ id, item, method, pressure, result, note, inspectorId: inspector.id, deviceAt }]
  const body = { operationKey, testedBy: personId, ...(behind && { behind }), results }
  return call(recordInspections, { params: { id: jobId }, body }, settings)
}

function sendLot({ personId, jobId, id, partId, lot, reason, deviceAt }: TypedLot, settings: CallSettings) {
  const body = { reason, typedBy: personId, lots: [{ id, partId, lot, deviceAt }] }
  return call(setLots, { params: { id: jobId }, body }, settings)
}

function sendFinding(work: Found, settings: CallSettings) {
  const { personId, jobId, operationKey, id, requirementKey, title, sentence, stops, deviceAt } = work
  const body = { id, operationKey, requirementKey, title, sentence, stops, raisedBy: personId, deviceAt }
  return call(raiseFinding, { params: { id: jobId }, body }, settings)
}

async function sendPhotograph(work: Photographed, settings: CallSettings) {
  const { personId, jobId, operationKey, id, subject, subjectKey, caption, picture, deviceAt } = work
  const data = await base64Of(picture)
  const body = { id, subject, subjectKey, operationKey, caption, takenBy: personId, deviceAt, data }
  return call(keepPhotograph, { params: { id: jobId }, body }, settings)
}
