import { hasDrifted } from '@tenths/domain'
import { isWrittenDown, type BenchWork, type MarkedSigned, type Tick, type ZeroChecked } from '../outbox/bench-work.ts'
import { withLocal } from '../readings/passes.ts'
import type { OperationSheet } from './operation-sheet.ts'
import { withWrittenDown } from './with-written-down.ts'

/**
 * A sheet with what was done on this device and is not in the service's answer yet, in the order in which it was done.
 * Work on another step of the job counts only where it lets this step begin.
 * @param whose whose clock the sheet shows; left out where all of it was done by that person
 */
export function withWork(sheet: OperationSheet, work: readonly BenchWork[], whose?: string): OperationSheet {
  const ofJob = work.filter(({ jobId }) => jobId === sheet.job.id)
  const readings = ofJob.filter((one) => one.kind === 'reading').filter((one) => isHere(sheet, one))
  let now = readings.length === 0 ? sheet : { ...sheet, passes: [...withLocal(sheet.passes, readings)] }
  for (const one of ofJob) now = withOne(now, one)
  return withClock(now, whose === undefined ? ofJob : ofJob.filter(({ personId }) => personId === whose))
}

function withOne(sheet: OperationSheet, work: BenchWork): OperationSheet {
  if (work.kind === 'signature') return withSignature(sheet, work)
  if (work.kind === 'zero-check') return withZero(sheet, work)
  if (isWrittenDown(work)) return withWrittenDown(sheet, work)
  if (!isHere(sheet, work)) return sheet
  if (work.kind === 'tick') return { ...sheet, observations: [...sheet.observations.filter(({ item }) => item !== work.item), seen(work)] }
  return sheet
}

function isHere(sheet: OperationSheet, { operationKey }: BenchWork): boolean {
  return operationKey === sheet.operation.key
}

/** The clock as the last of this work left it: a value or a tick begins work, as it does at the service, and a mark ends it. */
function withClock(sheet: OperationSheet, work: readonly BenchWork[]): OperationSheet {
  const last = work.findLast((one) => isHere(sheet, one) && turns(sheet, one))
  if (last === undefined) return sheet
  const running = last.kind === 'clock' ? last.action === 'start' : last.kind !== 'signature'
  return running === sheet.work.running ? sheet : { ...sheet, work: { ...sheet.work, running } }
}

/** What corrects a value, or a signed step, is no work. */
function turns({ signOffs }: OperationSheet, work: BenchWork): boolean {
  if (work.kind === 'clock' || work.kind === 'signature') return true
  const isWork = work.kind === 'tick' || (work.kind === 'reading' && work.reading.supersedes === null)
  return isWork && signOffs.every(({ reopened }) => reopened !== null)
}

/** The passes of which the check speaks, wherever they were taken, with what it found. */
function withZero(sheet: OperationSheet, work: ZeroChecked): OperationSheet {
  const spokenOf = new Set(work.passes)
  if (!sheet.passes.some(({ id }) => spokenOf.has(id))) return sheet
  const zero = { deviation: work.deviation, allowed: work.allowed, by: work.by, checkedAt: work.deviceAt }
  return {
    ...sheet,
    passes: sheet.passes.map((pass) => (spokenOf.has(pass.id) ? { ...pass, zero, isVoid: pass.isVoid || hasDrifted(zero) } : pass)),
  }
}

function seen({ item, outcome, note, since, by, deviceAt }: Tick): OperationSheet['observations'][number] {
  return { item, outcome, note, since, by, observedAt: deviceAt }
}

function withSignature(sheet: OperationSheet, work: MarkedSigned): OperationSheet {
  if (!isHere(sheet, work)) {
    if (!sheet.waitsFor.some(({ key, marked }) => key === work.operationKey && !marked)) return sheet
    return { ...sheet, waitsFor: sheet.waitsFor.map((step) => (step.key === work.operationKey ? { ...step, marked: true } : step)) }
  }
  if (sheet.pending.some(({ id }) => id === work.id) || sheet.signOffs.some(({ id }) => id === work.id)) return sheet
  const { id, jobId, jobNumber, operationKey, operationTitle: title, deviceAt: signedAt } = work
  const signers = work.signers.map((signer) => ({ ...signer, confirmed: false }))
  const pending = { id, jobId, jobNumber, operationKey, title, signedAt, signers, state: 'to-confirm' as const, reason: null }
  return { ...sheet, pending: [...sheet.pending, pending] }
}
