import type { SignOffPayload } from '../bench/sign-off-payload.ts'
import type { ConcessionPayload } from '../findings/decide-finding.ts'
import type { HandoverPayload } from '../record/hand-over.ts'
import type { SealedPayload, SealKind } from '../seals/seal.ts'
import type { StoredJob } from './stored-job.ts'

export interface PlanPayload {
  readonly revision: number
  readonly planHash: string
  readonly reason: string
  readonly person: string
}

export interface ReOpeningPayload {
  /** Null where the whole job was opened again. */
  readonly signOff: string | null
  readonly title?: string
  readonly cause: string
  readonly reason: string
  readonly person: string
}

interface Contents {
  readonly plan: PlanPayload
  readonly 'sign-off': SignOffPayload
  readonly concession: ConcessionPayload
  readonly 're-opening': ReOpeningPayload
  readonly handover: HandoverPayload
}

/** A seal whose payload could be read: what it says, and the step it speaks of. */
export interface OpenedSeal<Kind extends SealKind = SealKind> {
  readonly number: number
  readonly payload: SealedPayload<Contents[Kind]>
  readonly step: string | null
}

/** Reads a seal's payload; null when it is no longer the text of one, which its hash shows as well. */
export function openSeal(seal: StoredJob['seals'][number]): OpenedSeal | null {
  try {
    const payload = JSON.parse(seal.payload) as SealedPayload<Contents[SealKind]>
    return { number: seal.number, payload, step: stepOf(payload) }
  } catch {
    return null
  }
}

/** The seals of one kind. */
export function ofKind<Kind extends SealKind>(seals: readonly OpenedSeal[], kind: Kind): OpenedSeal<Kind>[] {
  return seals.filter(({ payload }) => payload.kind === kind) as OpenedSeal<Kind>[]
}

function stepOf({ kind, content }: SealedPayload<Contents[SealKind]>): string | null {
  switch (kind) {
    case 'sign-off': return (content as SignOffPayload).operation.title
    case 're-opening': return (content as ReOpeningPayload).title ?? null
    case 'concession': return (content as ConcessionPayload).operation
    default: return null
  }
}
