import fc from 'fast-check'
import { rotations, viewerSides } from '../engine/specification.ts'
import type { EngineSpecification, PinSharing } from '../engine/specification.ts'
import { rodJournalCount, throwCount } from '../engine/cylinder-counts.ts'
import { flatFour, inlineFour, single, v8 } from './engines.ts'

const turning = fc.constantFrom(...rotations)
const side = fc.constantFrom(...viewerSides)
const twoBankNumbering = fc.constantFrom('by-bank' as const, 'alternating' as const)
const anySharing = fc.constantFrom<PinSharing>('one-rod', 'two-plain-rods', 'split-pin', 'fork-and-blade')

/** Fills in the journals that the cylinders call for. */
function withJournals(engine: EngineSpecification): EngineSpecification {
  return {
    ...engine,
    mains: { ...engine.mains, count: throwCount(engine) + 1 },
    rodJournals: { ...engine.rodJournals, count: rodJournalCount(engine) },
  }
}

const inline = fc
  .record({ cylinders: fc.integer({ min: 1, max: 8 }), rotation: turning })
  .map((changes) => withJournals({ ...inlineFour, ...changes }))

const lone = turning.map((rotation) => withJournals({ ...single, rotation }))

const banked = {
  numbering: twoBankNumbering, firstBank: side, leadingBank: side, rotation: turning, pinSharing: anySharing,
}

/** Any V engine that the layout knows. */
export const anyV: fc.Arbitrary<EngineSpecification> = fc
  .record({
    ...banked,
    cylinders: fc.integer({ min: 1, max: 8 }).map((pairs) => 2 * pairs),
    bankAngle: fc.integer({ min: 10_000, max: 150_000 }),
  })
  .map((changes) => withJournals({ ...v8, ...changes }))

const flat = fc
  .record({ ...banked, cylinders: fc.integer({ min: 1, max: 6 }).map((pairs) => 2 * pairs) })
  .map((changes) => withJournals({ ...flatFour, ...changes }))

/** Any engine that the layout knows. */
export const anyEngine: fc.Arbitrary<EngineSpecification> = fc.oneof(inline, lone, anyV, flat)
