import type { Duty, PartsSpecification, RouteOptions, SheetLimit, WorkKind } from '@tenths/domain'
import type { CustomerKey } from '../customers.ts'
import type { EngineKey } from '../engines/index.ts'
import type { Floor } from '../floor.ts'

/** What came in with an engine. */
export interface DemoIntakeItem {
  readonly description: string
  readonly quantity: number
  readonly condition: string
  readonly ownedBy: 'customer' | 'shop'
}

/** One job of the demo: how it was opened, what the customer was told, and how far it has come. */
export interface DemoJob {
  /** Names the job in ids and chance: never changed. */
  readonly key: string
  readonly customer: CustomerKey
  readonly engine: EngineKey
  readonly serial: string
  readonly duty: Duty
  /** Left out: a short block. */
  readonly work?: WorkKind
  readonly wanted: string
  readonly notes: string
  /** Days from the day of loading; negative is late. */
  readonly promisedIn: number
  /** Parts that differ from the library's. */
  readonly parts?: PartsSpecification
  readonly options: RouteOptions
  /** Makers' sheets besides those of the engine: head bolts, camshaft, springs. */
  readonly sheets?: readonly SheetLimit[]
  readonly intake: readonly DemoIntakeItem[]
  /** Lines on the customer's status page, oldest first. */
  readonly told: readonly string[]
  /** The makers' sheets are not in the shop yet. */
  readonly sheetsMissing?: boolean
  /** What happens on the shop floor. */
  readonly play: (floor: Floor) => Promise<void>
}

/** Everything done: align honed, decked, bored over, crank ground, new bolts, balanced. */
export const fullWork: RouteOptions = {
  alignHone: true, deck: true, oversize: true, crank: 'grind', newRodBolts: true, balance: true,
}
/** A sound engine freshened up: bores honed, crank polished. */
export const freshenUp: RouteOptions = {
  alignHone: false, deck: false, oversize: false, crank: 'polish', newRodBolts: true, balance: true,
}

export const item = (
  description: string, quantity = 1, condition = '', ownedBy: DemoIntakeItem['ownedBy'] = 'customer',
): DemoIntakeItem => ({ description, quantity, condition, ownedBy })
