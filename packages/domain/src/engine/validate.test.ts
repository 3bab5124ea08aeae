import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { DomainError } from '../errors.ts'
import { nanometresOf } from '../exact/length.ts'
import { anyEngine } from '../testing/any-engine.ts'
import {
  flatFour,
  inches,
  inlineFour,
  metricParts,
  single,
  testPlans,
  v8,
  v8Parts,
} from '../testing/engines.ts'
import type { EngineSpecification, PartsSpecification } from './specification.ts'
import { validateCombination } from './validate-parts.ts'
import { validateEngine } from './validate.ts'

function refusal(engine: EngineSpecification, parts: PartsSpecification = v8Parts): DomainError | null {
  try {
    validateCombination(engine, parts)
    return null
  } catch (error) {
    if (error instanceof DomainError) return error
    throw error
  }
}

const zero = nanometresOf(0)

describe('an engine that cannot exist', () => {
  it.each<[string, EngineSpecification, string]>([
    ['a V with an odd number of cylinders', { ...v8, cylinders: 7 }, 'engine.cylinders'],
    ['nine in line', { ...inlineFour, cylinders: 9 }, 'engine.cylinders'],
    ['a single with two cylinders', { ...single, cylinders: 2 }, 'engine.cylinders'],
    ['a flat fourteen', { ...flatFour, cylinders: 14 }, 'engine.cylinders'],
    [
      'a cylinder without an exhaust valve',
      { ...v8, valveTrain: { camshaft: 'in-block', intakeValves: 1, exhaustValves: 0 } },
      'engine.valveTrain.exhaustValves',
    ],
    ['an engine that hardly turns', { ...v8, greatestSpeed: 75 }, 'engine.greatestSpeed'],
    ['an engine that turns at 75,000/min', { ...v8, greatestSpeed: 75_000 }, 'engine.greatestSpeed'],
    ['half a cylinder', { ...inlineFour, cylinders: 3.5 }, 'engine.cylinders'],
    ['a V without an angle', { ...v8, bankAngle: 0 }, 'engine.bankAngle'],
    ['a flat engine at 90°', { ...flatFour, bankAngle: 90_000 }, 'engine.bankAngle'],
    ['an angle in line', { ...inlineFour, bankAngle: 15_000 }, 'engine.bankAngle'],
    ['two banks numbered in one row', { ...v8, numbering: 'front-to-back' }, 'engine.numbering'],
    ['one row numbered by bank', { ...inlineFour, numbering: 'by-bank' }, 'engine.numbering'],
    ['a V that does not say where cylinder 1 is', { ...v8, firstBank: null }, 'engine.firstBank'],
    ['a V that does not say which bank leads', { ...v8, leadingBank: null }, 'engine.leadingBank'],
    ['shared pins in line', { ...inlineFour, pinSharing: 'two-plain-rods' }, 'engine.pinSharing'],
    [
      'a rod journal too many',
      { ...v8, rodJournals: { ...v8.rodJournals, count: 5 } },
      'engine.rodJournals.count',
    ],
    ['nine mains on four throws', { ...v8, mains: { ...v8.mains, count: 9 } }, 'engine.mains.count'],
    ['no bore', { ...v8, bore: zero }, 'engine.bore'],
    [
      'a housing smaller than its journal',
      { ...v8, mains: { ...v8.mains, housing: inches(2.4) } },
      'engine.mains.housing',
    ],
    [
      'fillets as wide as the journal',
      { ...v8, rodJournals: { ...v8.rodJournals, fillet: inches(1) } },
      'engine.rodJournals.fillet',
    ],
    ['a deck within one stroke of the crank', { ...v8, deckHeight: inches(3.4) }, 'engine.deckHeight'],
  ])('is refused: %s', (_, engine, field) => {
    expect(refusal(engine)).toMatchObject({ code: 'engine-impossible', field })
  })

  const { piston, rod, pin } = v8Parts
  it.each<[string, PartsSpecification, string]>([
    [
      'a rod shorter than the stroke allows',
      { ...v8Parts, rod: { ...rod, length: inches(4.1) } },
      'parts.rod.length',
    ],
    ['a rod three strokes long', { ...v8Parts, rod: { ...rod, length: inches(10.5) } }, 'parts.rod.length'],
    [
      'two rods wider than their pin',
      { ...v8Parts, rod: { ...rod, bigEndWidth: inches(0.95) } },
      'parts.rod.bigEndWidth',
    ],
    [
      'a bearing wider than its journal',
      { ...v8Parts, rodShell: { ...v8Parts.rodShell, width: inches(1.9) } },
      'parts.rodShell.width',
    ],
    [
      'shells that fill the housing',
      { ...v8Parts, mainShell: { ...v8Parts.mainShell, wall: inches(1.4) } },
      'parts.mainShell.wall',
    ],
    [
      'a piston larger than its bore',
      { ...v8Parts, piston: { ...piston, diameter: inches(4.03) } },
      'parts.piston.diameter',
    ],
    [
      'a pin longer than the bore',
      { ...v8Parts, pin: { ...pin, length: inches(4.1) } },
      'parts.pin.length',
    ],
    [
      'a pin of another size than its bore',
      { ...v8Parts, pin: { ...pin, diameter: inches(0.866) } },
      'parts.piston.pinBore',
    ],
    [
      'a pin bore through the crown',
      { ...v8Parts, piston: { ...piston, compressionHeight: inches(0.46) } },
      'parts.piston.compressionHeight',
    ],
    [
      'a mouth smaller than its bore',
      { ...v8Parts, piston: { ...piston, pinBoreMouth: inches(0.9) } },
      'parts.piston.pinBoreMouth',
    ],
    [
      'overlapping grooves',
      { ...v8Parts, piston: { ...piston, grooves: piston.grooves.toReversed() } },
      'parts.piston.grooves.1.upperFlank',
    ],
  ])('takes no parts that cannot go together: %s', (_, parts, field) => {
    expect(refusal(v8, parts)).toMatchObject({ code: 'engine-impossible', field })
  })
})

describe('an engine that can', () => {
  it('passes, with parts that fit it', () => {
    for (const { engine, parts } of testPlans) expect(refusal(engine, parts)).toBeNull()
    expect(refusal({ ...inlineFour, mains: { ...inlineFour.mains, count: 3 } }, metricParts)).toBeNull()
  })

  it('passes in every arrangement, size, numbering and sharing that the layout knows', () => {
    fc.assert(
      fc.property(anyEngine, (engine) => {
        expect(() => validateEngine(engine)).not.toThrow()
      }),
    )
  })
})
