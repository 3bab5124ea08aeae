import { session } from '../../session.svelte.ts'
import type { EntryDesk } from '../entry/entry-desk.svelte.ts'
import { figuresOf, viewCells, type CellView } from './cell-view.ts'

const empty: CellView = { text: '', isOpen: true, isCurrent: false, isWaiting: false, isBad: false }

/** What the cells of a step show, looked up for all of them at once. */
export class CellViews {
  readonly #read: () => EntryDesk
  #before: ReadonlyMap<string, CellView> | null = null

  constructor(read: () => EntryDesk) {
    this.#read = read
  }

  readonly #desk = $derived.by(() => this.#read())
  readonly #figures = $derived.by(() => figuresOf(this.#desk.sheet.cells, (key) => this.#desk.sheet.readingIn(key), session.unit))
  readonly #views = $derived.by(() => (this.#before = viewCells(this.#desk.sheet.cells, {
    drafts: this.#desk.state.drafts,
    figures: this.#figures,
    current: this.#desk.current?.key ?? null,
    correcting: this.#desk.state.correction?.cell ?? null,
    waiting: this.#desk.sheet.waitingCells,
    refused: this.#desk.sheet.refusedTexts,
  }, this.#before)))

  of(key: string): CellView {
    return this.#views.get(key) ?? empty
  }
}
