import type { EngineSpecification, PartsSpecification } from '../engine/specification.ts'
import { partOfPlace, type FeatureReference } from '../features/feature.ts'
import type { MaterialName } from './material.ts'

/** Cranks and pins are taken for alloy steel; a cast-iron crank expands about a tenth less. From memory. */
const steel: MaterialName = 'steel-4140'

/**
 * What the metal around a feature is, where its expansion is one material's and known, so that a reading may be corrected
 * to 20 °C. Null: soak it, do not correct it. That is so of an aluminium block with iron liners, of a block nobody has
 * told the material of, of aluminium rods with their bushings, of cast and hypereutectic pistons, and of anything
 * put together of several parts.
 */
export function materialOf(
  { place }: FeatureReference,
  { engine, parts }: { readonly engine: EngineSpecification; readonly parts: PartsSpecification },
): MaterialName | null {
  switch (partOfPlace(place).kind) {
    case 'block': return engine.block === 'iron' ? 'grey-iron' : null
    case 'crankshaft': case 'piston-pin': return steel
    case 'rod': return parts.rod.material === 'steel' ? steel : null
    case 'piston': return ofPiston[parts.piston.alloy] ?? null
    default: return null
  }
}

const ofPiston: Partial<Record<PartsSpecification['piston']['alloy'], MaterialName>> = {
  2618: 'aluminium-2618', 4032: 'aluminium-4032',
}
