import type { FeatureDefinition, MeasuringState, Quantity } from '@tenths/domain'
import { SvelteMap, SvelteSet } from 'svelte/reactivity'
import { rememberedGauge, rememberGauge } from '../device/remembered.ts'
import type { ReadingTable } from '../grid/tables.ts'
import type { BenchSheet } from '../sheet/bench-sheet.svelte.ts'
import { partIn, type Gauge, type Pass } from '../sheet/operation-sheet.ts'
import { matesOf } from '../verdicts/of-feature.ts'
import { rememberedSitting, rememberSitting, type Sitting } from './sitting.ts'

/** What is true of every value until it is changed: the gauge in hand, the state of the part, what the gauge was set on. */
export class InHand {
  readonly #sheet: BenchSheet
  readonly #chosen = new SvelteMap<Quantity, string>()
  readonly states = new SvelteSet<MeasuringState>()
  readonly #onMate = new SvelteMap<string, boolean>()
  #sitting = $state.raw<Sitting>({ settings: {}, temperatures: null })

  constructor(sheet: BenchSheet) {
    this.#sheet = sheet
    const { job, operation } = sheet.answer
    this.#sitting = rememberedSitting(job.id, operation.key, Date.now())
  }

  /** How warm part and room are, told once for the sitting; null while nobody told. */
  get temperatures(): Pass['temperatures'] {
    return this.#sitting.temperatures
  }

  tellTemperatures(temperatures: Pass['temperatures']): void {
    this.#tell({ ...this.#sitting, temperatures })
  }

  /** What the gauge is set to zero on for the features of a table: as told here, else as the table was begun. */
  settingFor(table: ReadingTable, gauge: Gauge): Pass['setting'] {
    if (this.isOnMate(table)) return null
    const told = this.#sitting.settings[settingKey(table, gauge)]
    if (told !== undefined) return told
    return table.rows.map(({ feature }) => this.#sheet.openPass(feature))
      .find((pass) => pass?.gaugeId === gauge.id)?.setting ?? null
  }

  tellSetting(table: ReadingTable, gauge: Gauge, setting: Pass['setting']): void {
    this.#tell({ ...this.#sitting, settings: { ...this.#sitting.settings, [settingKey(table, gauge)]: setting } })
  }

  #tell(sitting: Sitting): void {
    this.#sitting = sitting
    const { job, operation } = this.#sheet.answer
    rememberSitting(job.id, operation.key, sitting, Date.now())
  }

  /** The gauge chosen for a quantity: here, else at this bench the last time, else for what is begun at this step. */
  gaugeFor(quantity: Quantity): Gauge | null {
    const { gauges, operation } = this.#sheet.answer
    const id = this.#chosen.get(quantity) ?? rememberedGauge(operation.bench, quantity) ?? this.#begunWith(quantity)
    return gauges.find((gauge) => gauge.id === id) ?? null
  }

  choose(quantity: Quantity, gaugeId: string): void {
    this.#chosen.set(quantity, gaugeId)
    rememberGauge(this.#sheet.answer.operation.bench, quantity, gaugeId)
  }

  tick(state: MeasuringState, isSo: boolean): void {
    if (isSo) this.states.add(state)
    else this.states.delete(state)
  }

  /** Whether the gauge was set on the mating parts of a table's features: as said here, else as the table was begun. */
  isOnMate({ key, rows }: ReadingTable): boolean {
    return this.#onMate.get(key) ?? rows.some(({ feature }) => (this.#sheet.openPass(feature)?.setOn ?? null) !== null)
  }

  setOnMate(table: string, isSo: boolean): void {
    this.#onMate.set(table, isSo)
  }

  /** The mating part that the gauge was set on for this feature; null when it measures sizes. */
  setOn(feature: FeatureDefinition, table: ReadingTable | null): { partId: string; feature: string } | null {
    return table !== null && this.isOnMate(table) ? this.mateInPlace(feature) : null
  }

  /** The mate of a clearance that a gauge could be set on: it must be in its place. */
  mateInPlace(feature: FeatureDefinition): { partId: string; feature: string; mark: string } | null {
    for (const mate of matesOf(this.#sheet.answer.requirements, feature)) {
      const part = partIn(this.#sheet.answer, mate.place)
      if (part !== null) return { partId: part.partId, feature: mate.feature, mark: part.mark }
    }
    return null
  }

  #begunWith(quantity: Quantity): string | null {
    const begun = this.#sheet.features.find((feature) => feature.quantity === quantity && this.#sheet.openPass(feature))
    return begun === undefined ? null : (this.#sheet.openPass(begun)?.gaugeId ?? null)
  }
}

function settingKey(table: ReadingTable, gauge: Gauge): string {
  return `${table.key}/${gauge.id}`
}
