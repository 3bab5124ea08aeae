import type { FeatureDefinition, FeatureReference, Verdict } from '@tenths/domain'
import { featureKey, JUDGE_VERSION } from '@tenths/domain'
import { SvelteSet } from 'svelte/reactivity'
import { network } from '../../api/network.svelte.ts'
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
import { isOfReading, type TypedReading } from '../outbox/typed-reading.ts'
import { isFull } from '../readings/passes.ts'
import { disagreements } from '../verdicts/agreement.ts'
import { isGood } from '../verdicts/concession.ts'
import { judgeSheet } from '../verdicts/judge-sheet.ts'
import { dependsOn } from '../verdicts/of-feature.ts'
import { cellsByKey, openPasses, passesByFeature, readingsByCell } from './by-key.ts'
import { measuredHere, type OperationSheet, type Pass, type Reading } from './operation-sheet.ts'
import { withWork } from './with-work.ts'

/** One step at the bench as it stands now: the service's answer with what was typed here lying over it, judged. */
export class BenchSheet {
  readonly #read: () => OperationSheet

  constructor(read: () => OperationSheet) {
    this.#read = read
  }

  readonly #known = $derived.by(() => this.#read())
  /**
   * The service's answer, and over it what was done here and is not in it yet.
   */
  readonly answer: OperationSheet = $derived.by(() => withWork(
    this.#known,
    benchOutbox.of(this.#known.job.id)
      .filter(({ state, content, sequence }) => state !== 'refused' && (showsAtOnce(content) || sequence !== null))
      .map(({ content }) => content),
  ))
  readonly handOrder = choice<HandOrder>(`hand-order/${session.person.id}`, handOrders, 'down-and-up')
  /** What this step measures, each with its points in the order this person's hand moves. */
  readonly features = $derived.by(() => measuredHere(this.answer).map((feature) => inHandOrder(feature, this.handOrder.current)))
  readonly tables: readonly ReadingTable[] = $derived.by(() => readingTables(this.features))
  readonly cells = $derived.by(() => cellsInHandOrder(this.features))
  readonly #cellsByKey = $derived.by(() => cellsByKey(this.cells))

  readonly outgoing = $derived.by(() => benchOutbox.of(this.#known.job.id, this.#known.operation.key))
  readonly passes: readonly Pass[] = $derived.by(() => this.answer.passes)
  readonly verdicts: readonly Verdict[] = $derived.by(() => judgeSheet(this.answer, this.passes, session.unit))

  /** Features that were asked to be measured again and have no value of the new pass yet. */
  readonly again = new SvelteSet<string>()

  /** Features without a full pass of this step: also one without limits is recorded before the step is signed. */
  readonly unmeasured = $derived.by(() => this.features.filter((feature) => !isFull(feature, this.openPass(feature))))

  readonly waiting = $derived.by(() => this.outgoing.filter(({ state }) => state === 'waiting'))
  readonly refused = $derived.by(() => this.outgoing.filter(({ state }) => state === 'refused'))

  /** The service and this page judge the same readings differently, or with another version of the judge. */
  readonly isAtOdds = $derived.by(() => !network.isAway && (this.#known.judgeVersion !== JUDGE_VERSION
    || disagreements(judgeSheet(this.#known, this.#known.passes, session.unit), this.#known.verdicts).length > 0))

  /** Every step before this one is signed, or at least marked as signed, and one is only marked. */
  readonly isBehind = $derived.by(() => this.answer.waitsFor.length > 0 && this.answer.waitsFor.every(({ marked }) => marked))

  readonly #passesByFeature = $derived.by(() => passesByFeature(this.answer, this.passes, this.features))
  readonly #openPasses = $derived.by(() => openPasses(this.#passesByFeature, this.answer.operation.key, this.again))
  readonly #readings = $derived.by(() => readingsByCell(this.#openPasses, this.features))

  /** The pass that was taken, or is being taken, at this step; null before its first value, or to measure again. */
  openPass(feature: FeatureReference): Pass | null {
    return this.#openPasses.get(featureKey(feature)) ?? null
  }

  /** Passes that no longer count, or were taken at another step. */
  otherPasses(feature: FeatureReference): readonly Pass[] {
    const open = this.openPass(feature)
    return (this.#passesByFeature.get(featureKey(feature)) ?? []).filter(({ id }) => id !== open?.id)
  }

  /** The feature as the plan has it: everybody doubts and judges it in that order. */
  planned(feature: FeatureDefinition): FeatureDefinition {
    return this.answer.features.find((one) => featureKey(one) === featureKey(feature)) ?? feature
  }

  cellOf(key: string | null): Cell | null {
    return key === null ? null : this.#cellsByKey.get(key) ?? null
  }

  /** The value that counts in a cell, by the cell's key. */
  readingIn(cell: string): Reading | null {
    return this.#readings.get(cell) ?? null
  }

  refusedAt(cell: string): OutboxEntry<TypedReading> | null {
    return this.#readingAt(this.refused, cell)
  }

  waitingAt(cell: string): OutboxEntry<TypedReading> | null {
    return this.#readingAt(this.waiting, cell)
  }

  #readingAt(entries: readonly OutboxEntry<BenchWork>[], cell: string): OutboxEntry<TypedReading> | null {
    return entries.filter(isOfReading).find(({ content }) => content.cell === cell) ?? null
  }

  /** Where and by whom something is done that is done here and now. */
  doneHere(): DoneAtStep {
    const { job, operation } = this.answer
    return {
      personId: session.person.id, by: session.person.name, jobId: job.id, jobNumber: job.number,
      operationKey: operation.key, operationTitle: operation.title, behind: this.isBehind, deviceAt: deviceTime(),
    }
  }

  /** Whether a requirement that rests on this feature is neither within nor accepted by the owner. */
  needsWork(feature: FeatureReference): boolean {
    return this.answer.requirements.some((requirement, index) => {
      const verdict = this.verdicts[index]
      return verdict !== undefined && dependsOn(requirement, feature) && !isGood(verdict, this.answer.concessions)
    })
  }

  measureAgain(feature: FeatureReference): void {
    this.again.add(featureKey(feature))
  }

  isMeasuredHere(reference: FeatureReference): boolean {
    return this.features.some((feature) => featureKey(feature) === featureKey(reference))
  }
}
