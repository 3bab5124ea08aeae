import { round } from '../exact/rounding.ts'
import type { FitContext } from '../fits/fit-definition.ts'
import type { RuleInForce } from '../fits/rule-in-force.ts'

/** How the bobweights of one engine are made up, before anything is weighed. */
export interface BobweightRule {
  /** Each pin with the cylinders whose rods run on it, front rod first. */
  readonly pins: readonly { readonly crankpin: number; readonly cylinders: readonly number[] }[]
  /** Share of the reciprocating weight in thousandths; null while nobody has said. */
  readonly factor: number | null
  /** Milligrams for the whole pin. */
  readonly oil: number
  /** Retaining rings go up and down with a floating pin. */
  readonly hasRetainers: boolean
  /** Whose figures factor and oil are. */
  readonly source: string
}

/** The arrangement that a half is usual for: two rods on each of four pins, the banks at a right angle. */
const RIGHT_ANGLE = 90_000

/**
 * Which bobweights this engine's crank is spun with, or null where it is spun bare: inline engines, and boxers with a pin for
 * every rod, carry their own balance. The engine's own factor comes first; without it the rule's share stands for the 90° V8
 * alone, because any other crank is balanced by a share that only its maker knows.
 */
export function bobweightRule({ engine, parts, cylinders }: FitContext, rule: RuleInForce): BobweightRule | null {
  const { arrangement, pinSharing, crank } = engine
  if (arrangement === 'inline' || (arrangement === 'flat' && pinSharing === 'one-rod')) return null
  const isUsualV8 = arrangement === 'v' && engine.cylinders === 8 && engine.bankAngle === RIGHT_ANGLE && pinSharing !== 'split-pin'
  const own = crank?.balanceFactor
  const factor = own ?? (isUsualV8 ? round(10 * rule.read('factor'), 'half-even') : null)
  const oil = rule.read('oil')
  const pins = [...new Set(cylinders.map(({ crankpin }) => crankpin))].toSorted((one, other) => one - other)
  return {
    pins: pins.map((crankpin) => ({
      crankpin,
      cylinders: cylinders.filter((one) => one.crankpin === crankpin)
        .toSorted((one, other) => one.placeOnPin - other.placeOnPin).map(({ cylinder }) => cylinder),
    })),
    factor,
    oil,
    hasRetainers: parts.pin.fit === 'floating',
    source: own === undefined ? rule.sources() : `factor as written with the engine; oil ${rule.sources()}`,
  }
}
