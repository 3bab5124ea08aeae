import type { SignOffPayload } from '../bench/sign-off-payload.ts'
import { canonicalText } from '../seals/canonical.ts'
import type { Blame } from './fault.ts'
import { ofKind, type OpenedSeal } from './opened-seal.ts'
import type { StoredJob, StoredSignOff } from './stored-job.ts'

/**
 * Every signature against its seal: who signed, under which definition, on which readings, ticks and
 * concessions.
 */
export function checkSignOffs(job: StoredJob, opened: readonly OpenedSeal[], blame: Blame): void {
  const seals = ofKind(opened, 'sign-off')
  for (const { number, step, payload: { content } } of seals) {
    const stored = job.signOffs.find(({ id }) => id === content.signOff)
    if (stored === undefined) {
      blame(step, `seal ${number}: the signature that it seals is gone`)
      continue
    }
    const complain = (sentence: string) => blame(step, `seal ${number}: ${sentence}`)
    checkSignOff(stored, number, content, complain)
    checkReadings(job, stored, content, complain)
    checkZeros(job, content, complain)
    checkTicks(job, content, complain)
    checkRecords(job, content, complain)
    checkLimits(job, content, complain)
  }
  const sealed = new Set(seals.map(({ payload }) => payload.content.signOff))
  for (const { id, operationKey, sealNumber } of job.signOffs) {
    if (!sealed.has(id)) {
      blame(
        operationKey, `seal ${sealNumber} does not speak of the signature that names it`,
      )
    }
  }
}

type Complain = (sentence: string) => void

function checkSignOff(
  stored: StoredSignOff, number: number, content: SignOffPayload, complain: Complain,
): void {
  if (stored.sealNumber !== number) complain(`the signature names seal ${stored.sealNumber}`)
  if (stored.operationKey !== content.operation.key) complain(`the signature is on ${stored.operationKey}`)
  if (stored.definitionHash !== content.definitionHash) complain('the signature is under another definition')
  if (stored.planRevision !== content.planRevision) {
    complain(
      `the signature is under plan ${stored.planRevision}`,
    )
  }
  if (!areEqual(stored.withoutNetwork, content.withoutNetwork ?? null)) {
    complain('it was not given and confirmed when it says')
  }
  const signers = content.signers.map(({ id }) => id).sort()
  if (!areEqual(signers, stored.signers)) {
    complain(
      `it was signed by ${content.signers.map(({ name }) => name).join(' and ')}, and the records name others`,
    )
  }
}

function checkReadings(
  job: StoredJob, stored: StoredSignOff, content: SignOffPayload, complain: Complain,
): void {
  if (!areEqual(content.readings.map(({ id }) => id).sort(), stored.readings)) {
    complain(
      'it relied on other readings',
    )
  }
  const isReOpened = job.reOpenings.some(({ signOff }) => signOff === stored.id)
  for (const sealed of content.readings) {
    const name = `reading ${sealed.part} ${sealed.feature} ${sealed.point}`
    const kept = job.readings.get(sealed.id)
    if (kept === undefined) {
      complain(`${name} is gone`)
      continue
    }
    const { superseded, ...reading } = kept
    const fields = new Set([...Object.keys(sealed), ...Object.keys(reading)] as (keyof typeof sealed)[])
    const differing = [...fields].filter(
      (field) => sealed[field] !== reading[field],
    )
    for (const field of differing) {
      complain(
        `${name}: ${field} is ${reading[field]}, sealed as ${sealed[field]}`,
      )
    }
    if (superseded && !isReOpened) complain(`${name} was corrected and the signature still stands`)
  }
}

function checkZeros(job: StoredJob, { zeros }: SignOffPayload, complain: Complain): void {
  for (const sealed of zeros?.checked ?? []) {
    const kept = job.zeroChecks.get(sealed.id)
    if (kept === undefined || !areEqual(kept, sealed)) complain(`the zero of gauge ${sealed.gauge} was not checked as it was sealed`)
  }
}

function checkTicks(job: StoredJob, content: SignOffPayload, complain: Complain): void {
  for (const { title, ...sealed } of content.observations) {
    const kept = job.observations.get(sealed.id)
    if (kept === undefined || !areEqual(kept, sealed)) complain(`“${title}” is not ticked as it was sealed`)
  }
  for (const sealed of content.concessions) {
    const kept = job.concessions.find(({ finding }) => finding === sealed.finding)
    const isSame = kept?.requirement === sealed.requirement && kept.low === sealed.low && kept.high === sealed.high
      && kept.reason === sealed.reason
    if (!isSame) complain(`the concession for ${sealed.requirement} is not the one that it relied on`)
  }
}

/** Results of tests, lots, and photographs by the hash of their bytes; older seals know of none. */
function checkRecords(job: StoredJob, content: SignOffPayload, complain: Complain): void {
  for (const { title, ...sealed } of content.inspections ?? []) {
    if (!areEqual(job.inspections.get(sealed.id) ?? null, sealed)) complain(`the result of “${title}” is not as it was sealed`)
  }
  for (const sealed of content.lots ?? []) {
    if (!areEqual(job.lots.get(sealed.id) ?? null, sealed)) complain(`the lot of ${sealed.part} is not the one that was sealed`)
  }
  for (const sealed of content.photographs ?? []) {
    const kept = job.photographs.get(sealed.id)
    if (kept === undefined) complain('a photograph that it sealed is gone')
    else if (!areEqual(kept, sealed)) complain('a photograph is not the one that was sealed')
  }
}

function checkLimits(job: StoredJob, content: SignOffPayload, complain: Complain): void {
  const text = job.plans.find(({ revision }) => revision === content.planRevision)?.plan
  if (text === undefined) {
    complain(`plan ${content.planRevision} is gone`)
    return
  }
  for (const { key, title, limits } of content.requirements) {
    if (!areEqual(limits, limitsIn(text, key))) {
      complain(
        `the limits of “${title}” are not those of plan ${content.planRevision}`,
      )
    }
  }
}

function limitsIn(planText: string, requirementKey: string): unknown {
  try {
    const { requirements } = JSON.parse(planText) as { requirements: { key: string; limits: unknown }[] }
    return requirements.find(({ key }) => key === requirementKey)?.limits ?? null
  } catch {
    return null
  }
}

function areEqual(one: unknown, other: unknown): boolean {
  return canonicalText(one) === canonicalText(other)
}
