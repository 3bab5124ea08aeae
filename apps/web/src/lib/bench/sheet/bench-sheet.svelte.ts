import type { FeatureReference, Verdict } from '@tenths/domain'
import { featureKey, JUDGE_VERSION } from '@tenths/domain'
import { SvelteSet } from 'svelte/reactivity'
import { session } from '../../session.svelte.ts'
import { cellsInHandOrder, type Cell } from '../grid/cells.ts'
import { readingTables, type ReadingTable } from '../grid/tables.ts'
import { isFull, withLocal } from '../readings/passes.ts'
import type { OutboxEntry } from '../outbox/outbox-entry.ts'
import { benchOutbox } from '../outbox/bench-outbox.svelte.ts'
import type { TypedReading } from '../outbox/typed-reading.ts'
import { disagreements } from '../verdicts/agreement.ts'
import { isGood } from '../verdicts/concession.ts'
import { judgeSheet } from '../verdicts/judge-sheet.ts'
import { dependsOn } from '../verdicts/of-feature.ts'
import { cellsByKey, openPasses, passesByFeature, readingsByCell } from './by-key.ts'
import { measuredHere, type OperationSheet, type Pass, type Reading } from './operation-sheet.ts'

/** One step at the bench as it stands now: the service's answer with what was typed here lying over it, judged. */
export class BenchSheet {
  readonly #read: () => OperationSheet

  constructor(read: () => OperationSheet) {
    this.#read = read
  }

  readonly answer = $derived.by(() => this.#read())
  readonly features = $derived.by(() => measuredHere(this.answer))
  readonly tables: readonly ReadingTable[] = $derived.by(() => readingTables(this.features))
  readonly cells = $derived.by(() => cellsInHandOrder(this.features))
  readonly #cellsByKey = $derived.by(() => cellsByKey(this.cells))

  readonly outgoing = $derived.by(() => benchOutbox.of(this.answer.job.id, this.answer.operation.key))
  readonly passes: readonly Pass[] = $derived.by(() => withLocal(
    this.answer.passes,
    this.outgoing.filter(({ state }) => state !== 'refused').map(({ content }) => content),
  ))
  readonly verdicts: readonly Verdict[] = $derived.by(() => judgeSheet(this.answer, this.passes, session.unit))

  /** Features that were asked to be measured again and have no value of the new pass yet. */
  readonly again = new SvelteSet<string>()

  /** Features without a full pass of this step: also one without limits is recorded before the step is signed. */
  readonly unmeasured = $derived.by(() => this.features.filter((feature) => !isFull(feature, this.openPass(feature))))

  readonly waiting = $derived.by(() => this.outgoing.filter(({ state }) => state === 'waiting'))
  readonly refused = $derived.by(() => this.outgoing.filter(({ state }) => state === 'refused'))

  /** The service and this page judge the same readings differently, or with another version of the judge. */
  readonly isAtOdds = $derived.by(() => this.answer.judgeVersion !== JUDGE_VERSION
    || disagreements(judgeSheet(this.answer, this.answer.passes, session.unit), this.answer.verdicts).length > 0)

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

  cellOf(key: string | null): Cell | null {
    return key === null ? null : this.#cellsByKey.get(key) ?? null
  }

  /** The value that counts in a cell, by the cell's key. */
  readingIn(cell: string): Reading | null {
    return this.#readings.get(cell) ?? null
  }

  refusedAt(cell: string): OutboxEntry<TypedReading> | null {
    return this.refused.find(({ content }) => content.cell === cell) ?? null
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
