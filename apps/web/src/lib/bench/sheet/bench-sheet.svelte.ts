import type { FeatureDefinition, FeatureReference, Requirement, Verdict } from '@tenths/domain'
import { featureKey, JUDGE_VERSION, numbersWith, pointKey } from '@tenths/domain'
import { SvelteSet } from 'svelte/reactivity'
import { afterPaint } from '../../after-paint.svelte.ts'
import { network } from '../../api/network.svelte.ts'
import { serverClockAhead } from '../../api/reach.ts'
import { keepSame, steadyList } from '../../keep-same.ts'
import { session } from '../../session.svelte.ts'
import { choice } from '../device/choice.svelte.ts'
import { deviceTime } from '../device/device-time.ts'
import { cellsInHandOrder, type Cell } from '../grid/cells.ts'
import { handOrders, inHandOrder, type HandOrder } from '../grid/hand-order.ts'
import { readingTables, type ReadingTable } from '../grid/tables.ts'
import { benchOutbox } from '../outbox/bench-outbox.svelte.ts'
import { showsAtOnce, type BenchWork } from '../outbox/bench-work.ts'
import type { DoneAtStep } from '../outbox/done-at-step.ts'
import type { OutboxEntry } from '../outbox/outbox-entry.ts'
import type { TypedReading } from '../outbox/typed-reading.ts'
import { isFull } from '../readings/passes.ts'
import { disagreements } from '../verdicts/agreement.ts'
import { isGood } from '../verdicts/concession.ts'
import { judgeOf, judgeSheet } from '../verdicts/judge-sheet.ts'
import { dependsOn } from '../verdicts/of-feature.ts'
import { cellsByKey, cellsOf, openPasses, passesByFeature, readingsByCell, textsByCell, typedByCell } from './by-key.ts'
import { measuredHere, partIn, type OperationSheet, type Pass, type Reading } from './operation-sheet.ts'
import { withWork } from './with-work.ts'

/** Passes by their feature's key: all of them, and the one of this step that is open. */
interface TakenPasses {
  readonly all: ReadonlyMap<string, readonly Pass[]>
  readonly open: ReadonlyMap<string, Pass>
  /** Readings that count, by their cell's key. */
  readonly readings: ReadonlyMap<string, Reading>
}

/** One step at the bench as it stands now: the service's answer with what was typed here lying over it, judged. */
export class BenchSheet {
  readonly #read: () => OperationSheet
  readonly #judgeBehind: { readonly current: (requirement: Requirement) => Verdict }
  readonly #knownBehind: { readonly current: OperationSheet }
  readonly #takenBehind: { readonly current: TakenPasses }

  constructor(read: () => OperationSheet) {
    this.#read = read
    this.#judgeBehind = afterPaint(() => this.#judge)
    this.#knownBehind = afterPaint(() => this.#known)
    this.#takenBehind = afterPaint(() => ({ all: this.#passesByFeature, open: this.#openPasses, readings: this.#readings }))
  }

  readonly #known = $derived.by(() => this.#read())
  readonly #steadyWork = steadyList<BenchWork>()
  readonly #steadyOutgoing = steadyList<OutboxEntry<BenchWork>>()
  /** What was done here as it lies over the answer: the same list whatever becomes of it on its way. */
  readonly #work = $derived.by(() => this.#steadyWork(benchOutbox.of(this.#known.job.id)
    .filter(({ state, content, sequence }) => state !== 'refused' && (showsAtOnce(content) || sequence !== null))
    .map(({ content }) => content)))
  /** The service's answer, and over it what was done here and is not in it yet. */
  readonly answer: OperationSheet = $derived.by(() => withWork(this.#known, this.#work, session.person.id))
  readonly handOrder = choice<HandOrder>(`hand-order/${session.person.id}`, handOrders, 'down-and-up')
  // A reading changes none of these: what is laid out by them is laid out once.
  readonly #planned = $derived.by(() => this.#known.features)
  readonly #operation = $derived.by(() => this.#known.operation)
  readonly #placed = $derived.by(() => this.#known.placed)
  readonly requirements = $derived.by(() => this.#known.requirements)
  /** What this step measures, each with its points in the order this person's hand moves. */
  readonly features = $derived.by(() => measuredHere({ features: this.#planned, operation: this.#operation })
    .map((feature) => inHandOrder(feature, this.handOrder.current)))
  readonly tables: readonly ReadingTable[] = $derived.by(() => readingTables(this.features))
  readonly cells = $derived.by(() => cellsInHandOrder(this.features))
  readonly #cellsByKey = $derived.by(() => cellsByKey(this.cells))

  readonly #ownNumbers = $derived.by(() => this.#known.numbers)
  /** By what the shop doubts a value. */
  readonly numbers = $derived.by(() => numbersWith(this.#ownNumbers ?? {}))

  readonly outgoing = $derived.by(() => this.#steadyOutgoing(benchOutbox.of(this.#known.job.id, this.#operation.key)))
  readonly passes: readonly Pass[] = $derived.by(() => this.answer.passes)
  readonly #judge = $derived.by(() => judgeOf(this.answer, this.passes, session.unit))
  #judged: readonly Verdict[] = []
  /** The verdict on each requirement, one frame behind the key that changed it; those in hand are had at once. */
  readonly verdicts: readonly Verdict[] = $derived.by(() =>
    (this.#judged = keepSame(this.#judged, this.requirements.map(this.#judgeBehind.current))))

  /** Features that were asked to be measured again and have no value of the new pass yet. */
  readonly again = new SvelteSet<string>()

  /** Features without a full pass of this step: also one without limits is recorded before the step is signed. */
  readonly unmeasured = $derived.by(() => this.features.filter((feature) => !isFull(feature, this.openPass(feature))))

  readonly waiting = $derived.by(() => this.outgoing.filter(({ state }) => state === 'waiting'))
  readonly refused = $derived.by(() => this.outgoing.filter(({ state }) => state === 'refused'))

  /** The service and this page judge the same readings differently, or with another version of the judge. */
  readonly isAtOdds = $derived.by(() => {
    const { current: known } = this.#knownBehind
    return !network.isAway && (known.judgeVersion !== JUDGE_VERSION
      || disagreements(judgeSheet(known, known.passes, session.unit), known.verdicts).length > 0)
  })

  /** Every step before this one is signed, or at least marked as signed, and one is only marked. */
  readonly isBehind = $derived.by(() => this.answer.waitsFor.length > 0 && this.answer.waitsFor.every(({ marked }) => marked))

  readonly #passesByFeature = $derived.by(() => passesByFeature({ placed: this.#placed }, this.passes, this.features))
  readonly #openPasses = $derived.by(() => openPasses(this.#passesByFeature, this.#operation.key, this.again))
  readonly #readings = $derived.by(() => readingsByCell(this.#openPasses, this.features))
  /** Cells whose value has not reached the service. */
  readonly waitingCells = $derived.by(() => cellsOf(this.waiting))
  readonly #refusedReadings = $derived.by(() => typedByCell(this.refused))
  /** What was typed in the cells whose value the service refused. */
  readonly refusedTexts = $derived.by(() => textsByCell(this.#refusedReadings))

  /** The pass that was taken, or is being taken, at this step; null before its first value, or to measure again. */
  openPass(feature: FeatureReference): Pass | null {
    return this.#openPasses.get(featureKey(feature)) ?? null
  }

  /** Passes that no longer count, or were taken at another step. */
  otherPasses(feature: FeatureReference): readonly Pass[] {
    const open = this.openPass(feature)
    return (this.#passesByFeature.get(featureKey(feature)) ?? []).filter(({ id }) => id !== open?.id)
  }

  /** The pass that is being taken, or would be next, one frame behind the key that began it; null for the first of a feature. */
  passBehind(feature: FeatureReference): { readonly number: number; readonly isNew: boolean } | null {
    const { all, open } = this.#takenBehind.current
    const now = open.get(featureKey(feature))
    const before = (all.get(featureKey(feature)) ?? []).findLast(({ id }) => id !== now?.id)
    if (before === undefined) return null
    return now === undefined ? { number: before.number + 1, isNew: true } : { number: now.number, isNew: false }
  }

  /** The size in a cell, one frame behind the key that stored it; null while there is none, or what was read is a clearance. */
  sizeBehind(feature: FeatureReference, point: string): number | null {
    const { open, readings } = this.#takenBehind.current
    return open.get(featureKey(feature))?.setOn ? null : readings.get(pointKey(feature, point))?.value ?? null
  }

  /** The feature as the plan has it: everybody doubts and judges it in that order. */
  planned(feature: FeatureDefinition): FeatureDefinition {
    return this.answer.features.find((one) => featureKey(one) === featureKey(feature)) ?? feature
  }

  /** The verdicts that a value of this feature has a say in, as they are now. */
  verdictsOn(feature: FeatureReference): readonly { readonly requirement: Requirement; readonly verdict: Verdict }[] {
    return this.requirements.filter((requirement) => dependsOn(requirement, feature))
      .map((requirement) => ({ requirement, verdict: this.#judge(requirement) }))
  }

  cellOf(key: string | null): Cell | null {
    return key === null ? null : this.#cellsByKey.get(key) ?? null
  }

  /** The value that counts in a cell, by the cell's key. */
  readingIn(cell: string): Reading | null {
    return this.#readings.get(cell) ?? null
  }

  refusedAt(cell: string): OutboxEntry<TypedReading> | null {
    return this.#refusedReadings.get(cell) ?? null
  }

  /** Where and by whom something is done that is done here and now. */
  doneHere(): DoneAtStep {
    const { job, operation } = this.answer
    return {
      personId: session.person.id, by: session.person.name, jobId: job.id, jobNumber: job.number,
      operationKey: operation.key, operationTitle: operation.title, behind: this.isBehind,
      deviceAt: deviceTime(), deviceOffset: serverClockAhead(),
    }
  }

  /** Whether a requirement that rests on this feature is neither within nor accepted by the owner. */
  needsWork(feature: FeatureReference): boolean {
    return this.verdictsOn(feature).some(({ verdict }) => !isGood(verdict, this.answer.concessions))
  }

  measureAgain(feature: FeatureReference): void {
    this.again.add(featureKey(feature))
  }

  /** The mark of the part that sits in a place; null while none does. */
  markIn(place: string): string | null {
    return partIn({ placed: this.#placed }, place)?.mark ?? null
  }

  isMeasuredHere(reference: FeatureReference): boolean {
    return this.features.some((feature) => featureKey(feature) === featureKey(reference))
  }
}
