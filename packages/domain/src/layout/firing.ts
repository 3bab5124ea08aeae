import type { EngineSpecification } from '../engine/specification.ts'
import { DomainError } from '../errors.ts'
import { orientations } from './orientation.ts'

/** Two turns of the crank, in thousandths of a degree. */
const CYCLE = 720_000
const TURN = 360_000

/** When a cylinder is at top centre of its power stroke, and where its crankpin then stands on the crank. */
export interface FiringEvent {
  readonly cylinder: number
  /** Crank angle after the first cylinder of the order, thousandths of a degree, 0 to under 720°. */
  readonly firesAt: number
  /**
   * The crankpin's place on the crank: angle against the running direction from that of the first cylinder.
   */
  readonly pinAngle: number
}

/**
 * Crank angle of every cylinder of a four-stroke engine, in firing order.
 * @param order every cylinder once
 * @param intervals from each firing to the next, thousandths of a degree, together 720°; left out, they are
 *   equal
 * @throws DomainError `layout-impossible` for an order that is not complete, intervals that do not close,
 *   or a shared crankpin that would have to be in two places at once
 * @formula firing-angles
 */
export function firingEvents(
  engine: EngineSpecification,
  order: readonly number[],
  intervals?: readonly number[],
): readonly FiringEvent[] {
  requireOrder(engine, order)
  const steps = intervals ?? order.map(() => CYCLE / order.length)
  requireIntervals(order, steps)
  const axis = new Map(
    orientations(engine).map(({ cylinder, bank, crankpin }) => [
      cylinder,
      {
        crankpin,
        angle: axisAngle(engine, bank),
      },
    ]),
  )
  const firstAngle = axis.get(order[0] ?? 0)?.angle ?? 0
  let firesAt = 0
  const events = order.map((cylinder, index) => {
    const angle = axis.get(cylinder)?.angle ?? 0
    const event = { cylinder, firesAt, pinAngle: turned(firesAt - (angle - firstAngle)) }
    firesAt += steps[index] ?? 0
    return event
  })
  requireSharedPins(events, (cylinder) => axis.get(cylinder)?.crankpin ?? 0)
  return events
}

/** Where a bank's axis lies in the running direction from straight up: the pin passes it that much later. */
function axisAngle(engine: EngineSpecification, bank: 'viewer-left' | 'viewer-right' | null): number {
  if (bank === null) return 0
  const later = (bank === 'viewer-right') === (engine.rotation === 'clockwise')
  return later ? engine.bankAngle / 2 : -engine.bankAngle / 2
}

/** An angle brought into one turn. */
function turned(angle: number): number {
  return ((angle % TURN) + TURN) % TURN
}

function requireOrder(engine: EngineSpecification, order: readonly number[]): void {
  const complete =
    order.length === engine.cylinders &&
    new Set(order).size === order.length &&
    order.every((cylinder) => Number.isInteger(cylinder) && cylinder >= 1 && cylinder <= engine.cylinders)
  if (!complete) {
    throw new DomainError('layout-impossible', 'A firing order names every cylinder once.', 'order')
  }
}

function requireIntervals(order: readonly number[], steps: readonly number[]): void {
  const total = steps.reduce((sum, step) => sum + step, 0)
  // Equal sevenths of a cycle are not whole thousandths: the sum may miss by less than one.
  const closes =
    steps.length === order.length && steps.every((step) => step >= 0) && Math.abs(total - CYCLE) < 1
  if (!closes) {
    throw new DomainError('layout-impossible', 'Firing intervals make 720 degrees together.', 'intervals')
  }
}

function requireSharedPins(events: readonly FiringEvent[], pinOf: (cylinder: number) => number): void {
  const known = new Map<number, FiringEvent>()
  for (const event of events) {
    const other = known.get(pinOf(event.cylinder))
    known.set(pinOf(event.cylinder), event)
    if (other === undefined) continue
    const apart = turned(event.pinAngle - other.pinAngle)
    if (Math.min(apart, TURN - apart) < 1) continue
    throw new DomainError(
      'layout-impossible',
      `Cylinders ${other.cylinder} and ${event.cylinder} share a crankpin, which cannot be in two places.`,
      'order',
    )
  }
}
