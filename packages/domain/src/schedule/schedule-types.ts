/**
 * Time in a schedule is whole minutes of the shop's local clock since a Monday 00:00 that the caller chooses. The domain
 * knows no calendar days: the caller turns days, holidays and zones into minutes and back.
 */
export type ShopMinute = number

/** When a bench is worked: half-open intervals of shop minutes, ascending, that neither touch nor overlap. */
export interface WorkingHours {
  readonly intervals: readonly (readonly [from: ShopMinute, to: ShopMinute])[]
}

export interface ScheduleBench {
  readonly key: string
  readonly kind: string
  readonly hours: WorkingHours
}

/** One step still to be done. `benchKind` null is waiting that books no bench: a soak, work sent out. */
export interface ScheduleOperation {
  readonly key: string
  readonly benchKind: string | null
  readonly minutes: number
  readonly after: readonly string[]
}

export interface ScheduleJob {
  readonly key: string
  /** End of the promised day. The nearest promise goes first wherever two jobs wait for one bench. */
  readonly promisedAt: ShopMinute
  readonly operations: readonly ScheduleOperation[]
}

export interface ScheduleInput {
  readonly now: ShopMinute
  readonly benches: readonly ScheduleBench[]
  readonly jobs: readonly ScheduleJob[]
}

/** When an operation is forecast to run, and on which bench. */
export interface ForecastOperation {
  readonly job: string
  readonly operation: string
  readonly bench: string | null
  readonly start: ShopMinute
  readonly finish: ShopMinute
}

export interface ForecastJob {
  readonly job: string
  /** Null when the working hours given end before the job does. */
  readonly finish: ShopMinute | null
  readonly late: boolean
}

export interface Forecast {
  readonly operations: readonly ForecastOperation[]
  readonly jobs: readonly ForecastJob[]
}
