import type { EngineSpecification, PartsSpecification } from '../engine/specification.ts'
import { nanometresOf } from '../exact/length.ts'
import type { Nanometres } from '../exact/length.ts'
import { round } from '../exact/rounding.ts'
import type { PlanInput } from '../plan/plan-types.ts'

// Invented engines for tests of planning. Figures are plausible and belong to nobody's product.

/** Inches, for figures that are written so. */
export function inches(value: number): Nanometres {
  return nanometresOf(round(value * 25_400_000, 'half-even'))
}

/** Millimetres likewise. */
export function millimetres(value: number): Nanometres {
  return nanometresOf(round(value * 1_000_000, 'half-even'))
}

export const v8: EngineSpecification = {
  name: 'Test V8',
  arrangement: 'v',
  cylinders: 8,
  bankAngle: 90_000,
  numbering: 'by-bank',
  firstBank: 'viewer-right',
  leadingBank: 'viewer-right',
  rotation: 'clockwise',
  pinSharing: 'two-plain-rods',
  cooling: 'water',
  bore: inches(4.03),
  stroke: inches(3.5),
  deckHeight: inches(9.025),
  mains: {
    count: 5,
    diameter: inches(2.45),
    width: inches(1.05),
    fillet: inches(0.08),
    housing: inches(2.641),
  },
  rodJournals: {
    count: 4,
    diameter: inches(2.1),
    width: inches(1.895),
    fillet: inches(0.08),
    housing: inches(2.225),
  },
}

export const v8Parts: PartsSpecification = {
  piston: {
    alloy: '2618',
    diameter: inches(4.0258),
    compressionHeight: inches(1.55),
    pinBore: inches(0.9277),
    pinBoreMouth: inches(0.947),
    grooves: [
      { ring: 'top', upperFlank: inches(0.25), width: inches(0.0472) },
      { ring: 'second', upperFlank: inches(0.45), width: inches(0.0472) },
      { ring: 'oil', upperFlank: inches(0.62), width: inches(0.1181) },
    ],
    hasFrontMark: true,
  },
  pin: { fit: 'floating', diameter: inches(0.927), length: inches(2.5) },
  rod: { material: 'steel', length: inches(5.7), bigEndWidth: inches(0.94), smallEndBore: inches(0.9275) },
  retainers: { perSide: 2, thickness: inches(0.042), outerFlanks: inches(2.672) },
  rodShell: {
    width: inches(0.792),
    wall: inches(0.0615),
    cheekInset: inches(0.09),
    edgeBevel: inches(0.03),
  },
  mainShell: {
    width: inches(0.85),
    wall: inches(0.0945),
    cheekInset: inches(0.1),
    edgeBevel: inches(0.03),
  },
}

export const v6: EngineSpecification = {
  ...v8,
  name: 'Test V6',
  cylinders: 6,
  bankAngle: 60_000,
  numbering: 'alternating',
  firstBank: 'viewer-left',
  leadingBank: 'viewer-left',
  pinSharing: 'split-pin',
  mains: { ...v8.mains, count: 4 },
  rodJournals: { ...v8.rodJournals, count: 6, width: inches(0.96) },
}

export const inlineFour: EngineSpecification = {
  name: 'Test inline four',
  arrangement: 'inline',
  cylinders: 4,
  bankAngle: 0,
  numbering: 'front-to-back',
  firstBank: null,
  leadingBank: null,
  rotation: 'clockwise',
  pinSharing: 'one-rod',
  cooling: 'water',
  bore: millimetres(86),
  stroke: millimetres(86),
  deckHeight: millimetres(212),
  mains: {
    count: 5,
    diameter: millimetres(55),
    width: millimetres(24),
    fillet: null,
    housing: millimetres(59),
  },
  rodJournals: {
    count: 4,
    diameter: millimetres(48),
    width: millimetres(24),
    fillet: null,
    housing: millimetres(51),
  },
}

export const metricParts: PartsSpecification = {
  piston: {
    alloy: 'cast',
    diameter: millimetres(85.945),
    compressionHeight: millimetres(29.5),
    pinBore: millimetres(21.006),
    pinBoreMouth: null,
    grooves: [
      { ring: 'top', upperFlank: millimetres(5), width: millimetres(1.2) },
      { ring: 'second', upperFlank: millimetres(9), width: millimetres(1.2) },
      { ring: 'oil', upperFlank: millimetres(13), width: millimetres(2) },
    ],
    hasFrontMark: true,
  },
  pin: { fit: 'pressed', diameter: millimetres(21), length: millimetres(60) },
  rod: {
    material: 'steel',
    length: millimetres(139),
    bigEndWidth: millimetres(23.8),
    smallEndBore: millimetres(20.968),
  },
  retainers: null,
  rodShell: { width: millimetres(18), wall: millimetres(1.48), cheekInset: null, edgeBevel: null },
  mainShell: { width: millimetres(18), wall: millimetres(1.98), cheekInset: null, edgeBevel: null },
}

export const flatFour: EngineSpecification = {
  ...inlineFour,
  name: 'Test flat four',
  arrangement: 'flat',
  bankAngle: 180_000,
  numbering: 'alternating',
  firstBank: 'viewer-left',
  leadingBank: 'viewer-left',
  cooling: 'air',
  mains: { ...inlineFour.mains, count: 3 },
}

export const single: EngineSpecification = {
  ...inlineFour,
  name: 'Test single',
  arrangement: 'single',
  cylinders: 1,
  mains: { ...inlineFour.mains, count: 2 },
  rodJournals: { ...inlineFour.rodJournals, count: 1 },
}

/** A short block with everything ordered, on starter rules. */
export function planInput(
  engine: EngineSpecification,
  parts: PartsSpecification,
  changes: Partial<PlanInput> = {},
): PlanInput {
  return {
    work: 'short-block',
    engine,
    parts,
    duty: 'street',
    rules: [],
    sheets: [],
    options: {
      alignHone: true,
      deck: true,
      oversize: true,
      crank: 'grind',
      newRodBolts: true,
      balance: true,
    },
    ...changes,
  }
}

/** The test engines with parts that fit them. */
export const testPlans: readonly PlanInput[] = [
  planInput(v8, v8Parts),
  planInput(v6, v8Parts, { duty: 'hard-boost' }),
  planInput(inlineFour, metricParts),
  planInput(flatFour, metricParts),
  planInput(single, metricParts),
]
