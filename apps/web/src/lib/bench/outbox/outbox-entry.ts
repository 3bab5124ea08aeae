import type { ProblemError } from '../../api/problem.ts'

/** Why the service refused an entry, as plain data that a device can keep. */
export type Refusal = Pick<ProblemError, 'code' | 'status' | 'message'>

/** Something that was done and must reach the service once, with what became of it so far. */
export interface OutboxEntry<Content> {
  /** The idempotency key: every attempt carries it, so that a repeat has one effect. */
  readonly key: string
  /** Its place in the order of typing, given when the device keeps it; null until then. */
  readonly sequence: number | null
  readonly content: Content
  readonly state: 'waiting' | 'stored' | 'refused' | 'put-away'
  readonly problem: Refusal | null
  /** Why a person put it away instead of having it sent. */
  readonly reason: string | null
  /** The refused entry that this one corrects: it goes when this one is kept, never before. */
  readonly insteadOf: OutboxEntry<Content> | null
}

/** An entry as the device keeps it until it has arrived. */
export type KeptEntry<Content> = Omit<OutboxEntry<Content>, 'sequence' | 'state' | 'insteadOf'> & {
  readonly sequence: number
  readonly state: 'waiting' | 'refused' | 'put-away'
}

/** What lies on the device. */
export interface OnDevice<Content> {
  /** All that has not arrived, in the order of typing. */
  readonly entries: readonly KeptEntry<Content>[]
  /** Entries that a newer version of the program kept: they stay as they are. */
  readonly unreadable: number
}

/** Where entries lie until they have arrived; every tab of the device sees the same. */
export interface OutboxStore<Content> {
  readAll(): Promise<OnDevice<Content>>
  /** Keeps an entry for good and lets go of the one that it corrects, in one step. @returns its place in the order */
  keep(entry: OutboxEntry<Content>): Promise<number>
  change(entry: KeptEntry<Content>): Promise<void>
  remove(sequences: readonly number[]): Promise<void>
}

/**
 * What the device keeps, with what only this tab knows: values on their way into the store, and values that have
 * arrived but are not in the service's last answer yet. One that waited and is gone was sent by another tab. What an entry
 * holds never changes under its key: it stays the same object, so that nothing is judged anew because it was read again.
 */
export function merged<Content>(
  known: readonly OutboxEntry<Content>[], kept: readonly KeptEntry<Content>[],
): readonly OutboxEntry<Content>[] {
  const keys = new Set(kept.map(({ key }) => key))
  const elsewhere = known.filter(({ key }) => !keys.has(key))
  const arrived = elsewhere
    .filter(({ state, sequence }) => state === 'stored' || (state === 'waiting' && sequence !== null))
    .map((entry) => ({ ...entry, state: 'stored' as const, problem: null }))
  const unkept = elsewhere.filter(({ state, sequence }) => state === 'waiting' && sequence === null)
  const corrected = new Set(unkept.map(({ insteadOf }) => insteadOf?.key))
  const contents = new Map(known.map(({ key, content }) => [key, content]))
  const here = kept.filter(({ key }) => !corrected.has(key))
    .map((entry) => ({ ...entry, content: contents.get(entry.key) ?? entry.content, insteadOf: null }))
  return [...arrived, ...here, ...unkept]
}

/** Nobody is signed in any more, or another tab signed somebody else in: who sends must be asked anew. */
export function isOfAnother({ code }: Pick<Refusal, 'code'>): boolean {
  return code === 'not-signed-in' || code === 'other-person'
}

/** Troubles of the way, not of the content: the entry stays in its place and goes out again with the same key. */
export function isPassing(refusal: Refusal): boolean {
  return isAway(refusal) || isOfAnother(refusal) || refusal.status >= 500
}

/** Whether nothing else would get through either. */
export function stopsAll(refusal: Refusal): boolean {
  return isAway(refusal) || isOfAnother(refusal) || refusal.status === 503
}

/** No answer, or one of something on the way, which knows nothing of the content but how large it is. */
function isAway({ code, status }: Refusal): boolean {
  return code === 'no-network' || (code === 'answer-unreadable' && status !== tooLarge)
}

const tooLarge = 413
