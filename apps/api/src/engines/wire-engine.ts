import type { EngineSpecification as WireEngine, PartsSpecification as WireParts } from '@tenths/contract'
import { nanometresOf, type EngineSpecification, type Nanometres, type PartsSpecification } from '@tenths/domain'
import type { z } from 'zod'

type Branded<T> = T extends Nanometres ? number : T extends object ? { [K in keyof T]: Branded<T[K]> } : T

/**
 * An engine as it travelled, as the domain takes it. Every whole number of the wire was checked by its schema; which of
 * them are lengths is the domain's type to say.
 */
export function engineOf(wire: z.infer<typeof WireEngine>): EngineSpecification {
  return checked(wire satisfies Branded<EngineSpecification>) as EngineSpecification
}

/** The parts of an engine likewise. */
export function partsOf(wire: z.infer<typeof WireParts>): PartsSpecification {
  return checked(wire) as PartsSpecification
}

/** @throws DomainError `length-not-exact` for a number that is no whole one. */
function checked<T>(value: T): unknown {
  if (typeof value === 'number') return nanometresOf(value)
  if (Array.isArray(value)) return value.map(checked)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, checked(inner)]))
}
