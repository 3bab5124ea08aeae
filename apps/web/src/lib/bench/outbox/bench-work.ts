import type { ObservationState } from '../sheet/operation-sheet.ts'
import { plainStep, type DoneAtStep } from './done-at-step.ts'
import { plainReading, type TypedReading } from './typed-reading.ts'
import { plainWrittenDown, sayWrittenDown, type WrittenDown } from './written-down.ts'

/** One thing to see, looked at. */
export interface Tick extends DoneAtStep {
  readonly kind: 'tick'
  readonly id: string
  readonly item: string
  readonly title: string
  readonly outcome: ObservationState['outcome']
  readonly note: string
  /** Since when part and gauge have stood side by side, for a thing that asks for it. */
  readonly since: string | null
}

/** A touch on the person's clock. */
export interface ClockTurn extends DoneAtStep {
  readonly kind: 'clock'
  readonly id: string
  readonly action: 'start' | 'stop'
}

/** A step marked as signed, to be confirmed with a PIN when the network is back. */
export interface MarkedSigned extends DoneAtStep {
  readonly kind: 'signature'
  readonly id: string
  readonly definitionHash: string
  readonly signers: readonly { readonly id: string; readonly name: string }[]
  /** The readings that it relies on. */
  readonly readings: readonly string[]
}

/** What a gauge showed when it was put back on its setting, in nanometres off zero. */
export interface ZeroChecked extends DoneAtStep {
  readonly kind: 'zero-check'
  readonly id: string
  readonly gaugeId: string
  readonly gaugeMark: string
  readonly deviation: number
  readonly typed: string
  /** How far the zero may have moved, by the shop's number and the gauge. */
  readonly allowed: number
  /** The passes on this page of which it speaks: the service finds its own. */
  readonly passes: readonly string[]
}

/** Everything that is done at a bench and must reach the service once. */
export type BenchWork = TypedReading | Tick | ClockTurn | MarkedSigned | ZeroChecked | WrittenDown

/** Whether it is one of those that are written down beside values and ticks. */
export function isWrittenDown(work: BenchWork): work is WrittenDown {
  return work.kind === 'inspection' || work.kind === 'lot' || work.kind === 'finding' || work.kind === 'photograph'
}

/**
 * Whether it shows as done at once. A value or a tick is typed again in a moment; nobody leaves a step as signed, an area as
 * tested or the owner as asked that a crash could take back: those show once the device has kept them.
 */
export function showsAtOnce({ kind }: BenchWork): boolean {
  return kind === 'reading' || kind === 'tick' || kind === 'clock' || kind === 'zero-check'
}

/**
 * Whether work must go out after other work of the same person although it was done at another step: a zero check
 * speaks of every value that its gauge read before it on the job, and of none that it read after.
 */
export function mustFollow(work: BenchWork, earlier: BenchWork): boolean {
  if (work.jobId !== earlier.jobId || work.personId !== earlier.personId) return false
  if (work.kind !== 'zero-check' && earlier.kind !== 'zero-check') return false
  const gauge = gaugeOf(work)
  return gauge !== null && gauge === gaugeOf(earlier)
}

function gaugeOf(work: BenchWork): string | null {
  if (work.kind === 'reading') return work.pass.gaugeId
  return work.kind === 'zero-check' ? work.gaugeId : null
}

/** Exactly the fields of its kind, as plain data: nothing else that a page knows ever lies on the device, a PIN least of all. */
export function plainWork(work: BenchWork): BenchWork {
  if (work.kind === 'reading') return plainReading(work)
  if (isWrittenDown(work)) return plainWrittenDown(work)
  const { kind, id } = work
  const step = plainStep(work)
  if (kind === 'tick') {
    const { item, title, outcome, note, since } = work
    return { ...step, kind, id, item, title, outcome, note, since }
  }
  if (kind === 'zero-check') {
    const { gaugeId, gaugeMark, deviation, typed, allowed, passes } = work
    return { ...step, kind, id, gaugeId, gaugeMark, deviation, typed, allowed, passes: [...passes] }
  }
  if (kind === 'clock') return { ...step, kind, id, action: work.action }
  const signers = work.signers.map((signer) => ({ id: signer.id, name: signer.name }))
  return { ...step, kind, id, definitionHash: work.definitionHash, signers, readings: [...work.readings] }
}

const outcomes = { seen: 'seen', 'not-seen': 'not seen', 'not-applicable': 'not applicable' } as const

/** What it was, in few words: “Oil hole open: seen”. */
export function sayWork(work: BenchWork): string {
  if (work.kind === 'reading') return `${work.cellTitle}: ${work.reading.typed}`
  if (work.kind === 'tick') return `${work.title}: ${outcomes[work.outcome]}`
  if (work.kind === 'clock') return work.action === 'start' ? 'Work begun' : 'Work paused'
  if (work.kind === 'zero-check') return `Zero of ${work.gaugeMark}: ${work.typed}`
  return isWrittenDown(work) ? sayWrittenDown(work) : 'Signed, to be confirmed'
}
