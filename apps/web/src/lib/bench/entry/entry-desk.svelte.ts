import type { Doubt, FeatureDefinition } from '@tenths/domain'
import { doubtsOfTaken, featureKey, readsBlades } from '@tenths/domain'
import { SvelteMap } from 'svelte/reactivity'
import { newId } from '../../api/call.ts'
import { shopDay } from '../../days.ts'
import { deviceTime } from '../device/device-time.ts'
import { session } from '../../session.svelte.ts'
import { resolutionOf, senseOf } from '../gauges/fitness.ts'
import type { InHand } from '../gauges/in-hand.svelte.ts'
import { cellTitle, nextEmptyCell, type Cell } from '../grid/cells.ts'
import type { ReadingTable } from '../grid/tables.ts'
import { passToFill } from '../readings/pass-to-fill.ts'
import { latestPass } from '../readings/passes.ts'
import { benchOutbox } from '../outbox/bench-outbox.svelte.ts'
import { cannotKeepValues } from '../outbox/cannot-keep.ts'
import type { BenchSheet } from '../sheet/bench-sheet.svelte.ts'
import { partIn, type Pass, type Reading } from '../sheet/operation-sheet.ts'
import {
  beginCorrection, doubt, draftAt, enter, giveNote, giveReason, giveUp, moveTo, refuse, startEntry, stepBack, typeText,
  type EntryState,
} from './entry-state.ts'
import { doubleSend, type JustEntered } from './double-send.ts'
import { mergeDoubts } from './merge-doubts.ts'
import { otherPart } from './other-part.ts'
import { readEntry, type EntryContext } from './read-entry.ts'
import { typeKey, type PadKey } from './type-key.ts'

/** The typing of a step: what stands in each cell, and what Enter does with it. */
export class EntryDesk {
  readonly sheet: BenchSheet
  readonly inHand: InHand
  state = $state.raw<EntryState>(startEntry(null))
  /** The cell that the next keys are meant for, after a button elsewhere asked for a value; the cell takes it. */
  focusOn = $state<string | null>(null)
  /** Counts the values entered, so that whoever reads aloud knows when to speak. */
  entered = $state(0)
  /** The value entered last, said in full where it was typed in short: the eye checks it while the hand goes on. */
  lastStored = $state.raw<{ readonly cell: Cell; readonly echo: string | null } | null>(null)
  /** Why a value that the service refused is right all the same, as typed so far, by the key of its entry. */
  readonly standsBy = new SvelteMap<string, string>()
  /** Takes the focus to a cell at once where it is drawn and the hand is in the grid; the grid gives it. */
  takeFocusTo: (key: string) => boolean = () => false
  #justEntered: JustEntered | null = null
  readonly #scanned: () => string | null

  /** @param scanned mark of the part whose tag opened the page; null where none did */
  constructor(sheet: BenchSheet, inHand: InHand, scanned: () => string | null) {
    this.sheet = sheet
    this.inHand = inHand
    this.#scanned = scanned
  }

  /** Where the hand is; before it went anywhere, where work is left: an empty cell, else a value that is no good. */
  readonly current: Cell | null = $derived.by(() => this.sheet.cellOf(this.state.current)
    ?? this.sheet.cells.find(({ key }) => !this.isFilled(key))
    ?? this.sheet.cells.find(({ feature }) => this.sheet.needsWork(feature))
    ?? this.sheet.cells[0] ?? null)
  readonly table: ReadingTable | null = $derived.by(() => this.sheet.tables
    .find(({ rows }) => rows.some(({ cells }) => cells.some(({ key }) => key === this.current?.key))) ?? null)

  /** The feature whose verdicts are in sight: the one just finished, until the next has its first figure. */
  readonly spoken: FeatureDefinition | null = $derived.by(() => {
    const current = this.current?.feature ?? null
    const last = this.sheet.cellOf(this.state.trail.at(-1) ?? null)?.feature ?? null
    if (last === null || current === null) return current
    const isBegun = this.sheet.openPass(current) !== null || draftAt(this.state, this.current?.key ?? '') !== null
    return isBegun ? current : last
  })

  isFilled(key: string): boolean {
    return this.sheet.readingIn(key) !== null
  }

  /** Whether typing in the cell goes anywhere: it is empty, or its value is being corrected. */
  isOpen(key: string): boolean {
    return !this.isFilled(key) || this.state.correction?.cell === key
  }

  goTo(key: string): void { this.state = moveTo(this.state, key) }
  type(key: string, text: string): void { this.state = typeText(this.state, key, text) }
  reason(text: string): void { this.state = giveReason(this.state, text) }
  note(key: string, text: string): void { this.state = giveNote(this.state, key, text) }
  giveUp(key: string): void { this.state = giveUp(this.state, key) }

  /** Figures that come from elsewhere on the page: a gauge types wherever the cursor is. */
  append(text: string): void {
    const cell = this.current
    if (cell === null || !this.isOpen(cell.key)) return
    this.type(cell.key, (draftAt(this.state, cell.key)?.text ?? '') + text)
  }

  press(key: PadKey): void {
    const cell = this.current
    if (cell === null || !this.isOpen(cell.key)) return
    this.type(cell.key, typeKey(draftAt(this.state, cell.key)?.text ?? '', key))
  }

  correct(cell: Cell, reason = ''): void {
    const typed = this.sheet.readingIn(cell.key)?.typed ?? ''
    this.state = beginCorrection(this.state, cell.key, typed, reason)
    this.focusOn = cell.key
  }

  measureAgain(feature: FeatureDefinition): void {
    this.sheet.measureAgain(feature)
    const first = this.sheet.cells.find((cell) => featureKey(cell.feature) === featureKey(feature))
    if (first !== undefined) this.turnTo(first.key)
  }

  /** Goes to a cell from a button elsewhere: the focus comes along. */
  turnTo(key: string): void {
    this.goTo(key)
    this.focusOn = key
  }

  undo(): void {
    const back = stepBack(this.state)
    if (back === null) return
    this.state = back.state
    const cell = this.sheet.cellOf(back.correct)
    if (cell !== null && this.isFilled(cell.key)) this.correct(cell, 'Typed wrong, taken back at once.')
  }

  /** Stores what stands in the current cell and goes on to the next, or says at the cell why not. */
  enter(): void {
    const cell = this.current
    if (cell === null) return
    const draft = draftAt(this.state, cell.key)
    if (draft === null) return this.#goOn(cell)
    if (!benchOutbox.canKeep) return this.#refuse(cell, cannotKeepValues)
    const pass = this.#passFor(cell)
    if (typeof pass === 'string') return this.#refuse(cell, pass)
    const entry = readEntry(draft.text, this.#contextOf(cell, pass))
    if (entry.kind === 'unreadable') return this.#refuse(cell, entry.sentence)
    const now = { value: entry.value, at: performance.now() }
    const found = mergeDoubts([
      otherPart(this.sheet.answer, this.#scanned(), cell.feature), ...this.#doubtsOf(cell, pass, entry.value),
      doubleSend(this.#justEntered, now),
    ])
    const isStoodBy = draft.doubt !== null && (draft.doubt.outcome === 'ask' || draft.note.trim() !== '')
    if (found !== null && !(isStoodBy && found.outcome === draft.doubt?.outcome)) {
      this.state = doubt(this.state, cell.key, found)
      return
    }
    // A value in the wrong unit is not too fine for the gauge: what is really wrong with it was said first.
    if (entry.tooFine !== null) return this.#refuse(cell, entry.tooFine)
    this.#justEntered = now
    this.#store(cell, pass, {
      value: entry.value, blades: entry.blades, typed: draft.text.trim(), confirmed: found !== null,
      note: found === null ? null : draft.note.trim() || null,
    })
    this.lastStored = { cell, echo: entry.echo }
  }

  /** What the text in a cell would be in full; null while it is no value, or is typed in full. */
  echoOf(cell: Cell, text: string): string | null {
    const pass = this.#passFor(cell)
    if (typeof pass === 'string' || text.trim() === '') return null
    const entry = readEntry(text, this.#contextOf(cell, pass))
    return entry.kind === 'value' ? entry.echo : null
  }

  #contextOf({ feature }: Cell, pass: Omit<Pass, 'readings'>): EntryContext {
    // A slip is put right with the gauge that made it.
    const gauge = this.sheet.answer.gauges.find(({ id }) => id === pass.gaugeId) ?? null
    return {
      quantity: feature.quantity,
      typing: {
        unit: session.unit,
        shape: feature.shape,
        nominal: pass.setOn === null ? feature.nominal : null,
        setting: pass.setting === null || gauge === null ? null : { size: pass.setting.size, sense: senseOf(gauge) },
        readsBlades: gauge !== null && readsBlades(gauge.kind),
      },
      resolution: gauge && resolutionOf(gauge),
    }
  }

  /** What speaks against a value: the same questions, of the same facts, as the service asks. */
  #doubtsOf({ feature, point }: Cell, pass: Omit<Pass, 'readings'>, value: number): readonly Doubt[] {
    const { operation, features, requirements, placed, bore } = this.sheet.answer
    const { setting, temperatures } = pass
    return doubtsOfTaken({
      definition: this.sheet.planned(feature), point: point.key, value, passNumber: pass.number, isSetOnMate: pass.setOn !== null,
      state: pass.state, by: session.person.name, standardUncertainty: pass.standardUncertainty, settingSize: setting?.size ?? null,
      opensPass: this.sheet.openPass(feature) === null,
      warmth: temperatures && {
        part: temperatures.part, gauge: setting?.temperature ?? temperatures.room, material: pass.material,
      },
    }, { operation, features, requirements, placed, passes: this.sheet.passes, bore }, session.unit, this.sheet.numbers)
  }

  #goOn(cell: Cell): void {
    const next = nextEmptyCell(this.sheet.cells, cell.key, (key) => this.isFilled(key))
    if (next === null) return
    this.#bringFocus(next)
    this.goTo(next.key)
  }

  /**
   * The focus goes before anything is drawn anew, so that the page is laid out once and not twice. Where one feature is shown
   * at a time the next cell may not be there yet, and the cell that was typed in goes away and would take the focus along.
   */
  #bringFocus(next: Cell | null): void {
    if (next === null || this.takeFocusTo(next.key)) return
    if (document.activeElement?.closest('[role="grid"]')) this.focusOn = next.key
  }

  #refuse(cell: Cell, sentence: string): void {
    this.state = refuse(this.state, cell.key, sentence)
  }

  /** The pass that a value of this cell belongs to, or the sentence that says why there is none. */
  #passFor({ key, feature }: Cell): Omit<Pass, 'readings'> | string {
    const { correction } = this.state
    const isCorrecting = correction?.cell === key
    if (isCorrecting && correction.reason.trim() === '') return 'Say in a few words why the former value was false.'
    const latestNumber = latestPass(this.sheet.answer, this.sheet.passes, feature)?.number ?? 0
    const found = passToFill({
      feature,
      latestNumber,
      open: this.sheet.openPass(feature),
      isCorrecting,
      partId: partIn(this.sheet.answer, feature.place)?.partId ?? null,
      gauge: this.inHand.gaugeFor(feature.quantity),
      setOn: this.inHand.setOn(feature, this.table),
      setting: this.#settingFor(feature),
      temperatures: this.inHand.temperatures,
      material: this.sheet.answer.materials[feature.place] ?? null,
      states: this.inHand.states,
      today: shopDay(session.person.shop.timeZone),
    })
    if (found.kind === 'none') return found.sentence
    return found.kind === 'open' ? found.pass : {
      ...found.pass,
      id: newId(),
      number: latestNumber + 1,
      operationKey: this.sheet.answer.operation.key,
      by: session.person.name,
      openedAt: deviceTime(),
    }
  }

  #settingFor(feature: FeatureDefinition): Pass['setting'] {
    const gauge = this.inHand.gaugeFor(feature.quantity)
    return this.table === null || gauge === null ? null : this.inHand.settingFor(this.table, gauge)
  }

  #store(
    cell: Cell, pass: Omit<Pass, 'readings'>,
    said: Pick<Reading, 'value' | 'typed' | 'confirmed' | 'note'> & { readonly blades: Reading['blades'] | null },
  ): void {
    const correction = this.state.correction?.cell === cell.key ? this.state.correction : null
    const former = this.sheet.readingIn(cell.key)
    const { by, deviceAt: takenAt, ...step } = this.sheet.doneHere()
    const next = nextEmptyCell(this.sheet.cells, cell.key, (key) => key === cell.key || this.isFilled(key))
    this.#bringFocus(next)
    benchOutbox.add({
      ...step,
      kind: 'reading',
      cell: cell.key,
      cellTitle: cellTitle(cell),
      pass,
      reading: {
        id: newId(),
        point: cell.point.key,
        value: said.value,
        typed: said.typed,
        confirmed: said.confirmed,
        note: said.note,
        ...(said.blades && { blades: said.blades }),
        supersedes: correction && (former?.id ?? null),
        reason: correction && correction.reason.trim(),
        by,
        takenAt,
      },
      confirmed: said.confirmed,
    }, this.sheet.refusedAt(cell.key))
    this.sheet.again.delete(featureKey(cell.feature))
    this.state = enter(this.state, cell.key, next?.key ?? null)
    this.entered += 1
  }
}
