import type { Blame } from './fault.ts'
import { ofKind, type OpenedSeal } from './opened-seal.ts'
import type { StoredJob } from './stored-job.ts'

/** Concessions, re-openings and handovers against their seals, both ways. */
export function checkDecisions(job: StoredJob, opened: readonly OpenedSeal[], blame: Blame): void {
  checkConcessions(job, opened, blame)
  checkReOpenings(job, opened, blame)
  checkHandovers(job, opened, blame)
}

function checkConcessions(job: StoredJob, opened: readonly OpenedSeal[], blame: Blame): void {
  const seals = ofKind(opened, 'concession')
  for (const { number, step, payload: { content } } of seals) {
    const kept = job.concessions.find(({ finding }) => finding === content.finding)
    const isSame = kept !== undefined && kept.requirement === content.requirement && kept.low === content.low
      && kept.high === content.high && kept.reason === content.reason && kept.person === content.person.id
    if (!isSame) {
      blame(
        step, `seal ${number}: the concession “${content.title}” is not the one that was sealed`,
      )
    }
  }
  for (const { finding, requirement } of job.concessions) {
    if (seals.some(({ payload }) => payload.content.finding === finding)) continue
    blame(null, `the concession for ${requirement ?? 'a finding'} has no seal`)
  }
}

function checkReOpenings(job: StoredJob, opened: readonly OpenedSeal[], blame: Blame): void {
  const seals = ofKind(opened, 're-opening').filter(({ payload }) => payload.content.signOff !== null)
  for (const { number, step, payload: { content } } of seals) {
    const kept = job.reOpenings.find(({ signOff }) => signOff === content.signOff)
    const isSame = kept !== undefined && kept.sealNumber === number && kept.cause === content.cause
      && kept.reason === content.reason && kept.person === content.person
    if (!isSame) blame(step, `seal ${number}: the re-opening is not the one that was sealed`)
  }
  for (const { signOff, sealNumber } of job.reOpenings) {
    if (seals.some(
      ({ number, payload }) => number === sealNumber && payload.content.signOff === signOff,
    )) continue
    const step = job.signOffs.find(({ id }) => id === signOff)?.operationKey ?? null
    blame(step, `a re-opening names seal ${sealNumber}, which does not speak of it`)
  }
}

function checkHandovers(job: StoredJob, opened: readonly OpenedSeal[], blame: Blame): void {
  for (const { number, payload: { content } } of ofKind(opened, 'handover')) {
    for (const { operation, signOff } of content.signOffs) {
      if (job.signOffs.some(({ id, operationKey }) => id === signOff && operationKey === operation)) continue
      blame(operation, `seal ${number}: handed over on a signature that is gone`)
    }
  }
  const isSealedShut = opened.at(-1)?.payload.kind === 'handover'
  if ((job.state === 'handed-over') !== isSealedShut) {
    blame(
      null,
      isSealedShut
        ? 'the job is open, and its last seal handed it over'
        : 'the job is handed over, and its last seal does not say so',
    )
  }
}
