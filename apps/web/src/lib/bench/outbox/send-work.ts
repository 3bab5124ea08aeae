import { checkZero, markSigned, observe, startWork, takeReadings } from '@tenths/contract'
import { call, type AnswerOf, type CallSettings } from '../../api/call.ts'
import { isWrittenDown, type BenchWork, type ClockTurn, type MarkedSigned, type Tick, type ZeroChecked } from './bench-work.ts'
import type { TypedReading } from './typed-reading.ts'

/** Steps that are open again because of what was sent. */
export type Reopened = AnswerOf<typeof takeReadings>['reopened']

/** What came of work that arrived, beyond what its step shows. */
export interface Arrived {
  readonly reopened: Reopened
  /** Other steps on which a gauge read that is found to have drifted. */
  readonly alsoRead: AnswerOf<typeof checkZero>['alsoRead']
}

const nothingElse: Arrived = { reopened: [], alsoRead: [] }

/**
 * Sends one piece of work. Each names itself and its person, so that a repeat has one effect however late it comes,
 * and never lands under another's name.
 * @throws ProblemError as `call` does
 */
export async function sendWork(work: BenchWork, settings: CallSettings): Promise<Arrived> {
  if (work.kind === 'reading') return { ...nothingElse, reopened: (await sendReading(work, settings)).reopened }
  if (work.kind === 'zero-check') return sendZeroCheck(work, settings)
  if (isWrittenDown(work)) {
    // Few steps need it: a bench with a bad network waits for less.
    const { sendWrittenDown } = await import('./send-written-down.ts')
    return { ...nothingElse, reopened: await sendWrittenDown(work, settings) }
  }
  if (work.kind === 'tick') await sendTick(work, settings)
  else if (work.kind === 'clock') await sendTurn(work, settings)
  else await sendSignature(work, settings)
  return nothingElse
}

function sendReading({ personId, jobId, operationKey, behind, deviceOffset, pass, reading, confirmed }: TypedReading, settings: CallSettings) {
  const { id, partId, feature, number, gaugeId, state, setOn, setting, temperatures } = pass
  return call(takeReadings, {
    params: { id: jobId },
    body: {
      operationKey,
      takenBy: personId,
      ...(behind && { behind }),
      ...(deviceOffset !== null && { deviceOffset }),
      pass: { id, partId, feature, number, gaugeId, state, setOn, setting, temperatures },
      readings: [{
        id: reading.id,
        point: reading.point,
        value: reading.value,
        typed: reading.typed,
        supersedes: reading.supersedes,
        reason: reading.reason,
        deviceAt: reading.takenAt,
        confirmed,
        note: reading.note,
        ...(reading.blades && { blades: reading.blades }),
      }],
    },
  }, settings)
}

function sendTick(
  { personId, jobId, operationKey, behind, id, item, outcome, note, since, deviceAt, deviceOffset }: Tick, settings: CallSettings,
) {
  const observations = [{ id, item, outcome, note, since, deviceAt }]
  const body = { operationKey, seenBy: personId, ...(behind && { behind }), ...(deviceOffset !== null && { deviceOffset }), observations }
  return call(observe, { params: { id: jobId }, body }, settings)
}

function sendZeroCheck({ personId, jobId, id, gaugeId, deviation, typed }: ZeroChecked, settings: CallSettings) {
  const body = { id, gaugeId, deviation, typed, checkedBy: personId }
  return call(checkZero, { params: { id: jobId }, body }, settings)
}

function sendTurn({ personId, jobId, operationKey, id, action, deviceAt, deviceOffset }: ClockTurn, settings: CallSettings) {
  const body = { id, operationKey, action, workedBy: personId, deviceAt, deviceOffset }
  return call(startWork, { params: { id: jobId }, body }, settings)
}

function sendSignature(
  { personId, jobId, operationKey, id, definitionHash, signers, readings, deviceAt, deviceOffset }: MarkedSigned, settings: CallSettings,
) {
  const body = {
    id, operationKey, definitionHash, signedBy: personId, signers: signers.map((signer) => signer.id),
    readings: [...readings], deviceAt, deviceOffset,
  }
  return call(markSigned, { params: { id: jobId }, body }, settings)
}
