import {
  arrangements, blockMaterials, boreSurfaces, camshaftPlaces, chambers, coolings, cycles, headMaterials, ignitions, numberings, pinFits,
  pinSharings, pistonAlloys, pistonCrowns, rodMaterials, rotations, viewerSides,
} from '@tenths/domain'
import { z } from 'zod'
import { BaseValue, Line } from '../primitives.ts'

/** Engines and the parts they get, as the domain describes them; every length in nanometres. */

export const JournalSpecification = z.object({
  count: z.int().min(1).max(40),
  diameter: BaseValue,
  width: BaseValue,
  fillet: BaseValue.nullable(),
  housing: BaseValue,
})

export const EngineSpecification = z.object({
  name: Line(120),
  arrangement: z.enum(arrangements),
  cylinders: z.int().min(1).max(16),
  bankAngle: z.int().min(0).max(180_000),
  numbering: z.enum(numberings),
  firstBank: z.enum(viewerSides).nullable(),
  leadingBank: z.enum(viewerSides).nullable(),
  rotation: z.enum(rotations),
  pinSharing: z.enum(pinSharings),
  cooling: z.enum(coolings),
  block: z.enum(blockMaterials).exactOptional(),
  boreSurface: z.enum(boreSurfaces).exactOptional(),
  cycle: z.enum(cycles).exactOptional(),
  ignition: z.enum(ignitions).exactOptional(),
  greatestSpeed: z.int().min(100).max(30_000).exactOptional(),
  bore: BaseValue,
  stroke: BaseValue,
  deckHeight: BaseValue,
  mains: JournalSpecification,
  rodJournals: JournalSpecification,
  valveTrain: z.object({
    camshaft: z.enum(camshaftPlaces),
    intakeValves: z.int().min(1).max(3),
    exhaustValves: z.int().min(1).max(3),
  }).exactOptional(),
  head: z.object({
    material: z.enum(headMaterials).exactOptional(),
    bolts: z.int().min(2).max(48).exactOptional(),
    chamber: z.enum(chambers).exactOptional(),
  }).exactOptional(),
  crank: z.object({
    mass: BaseValue.exactOptional(),
    balanceFactor: z.int().min(0).max(1_000).exactOptional(),
  }).exactOptional(),
})

export const RingGroove = z.object({
  ring: z.enum(['top', 'second', 'oil']),
  upperFlank: BaseValue,
  width: BaseValue,
})

export const ShellSpecification = z.object({
  width: BaseValue,
  wall: BaseValue,
  cheekInset: BaseValue.nullable(),
  edgeBevel: BaseValue.nullable(),
})

export const PartsSpecification = z.object({
  piston: z.object({
    alloy: z.enum(pistonAlloys),
    diameter: BaseValue,
    compressionHeight: BaseValue,
    pinBore: BaseValue,
    pinBoreMouth: BaseValue.nullable(),
    grooves: z.array(RingGroove).max(6),
    hasFrontMark: z.boolean(),
    crown: z.enum(pistonCrowns).exactOptional(),
  }),
  pin: z.object({ fit: z.enum(pinFits), diameter: BaseValue, length: BaseValue }),
  rod: z.object({
    material: z.enum(rodMaterials),
    length: BaseValue,
    bigEndWidth: BaseValue,
    smallEndBore: BaseValue,
  }),
  retainers: z.object({ perSide: z.union([z.literal(1), z.literal(2)]), thickness: BaseValue, outerFlanks: BaseValue.exactOptional() }).nullable(),
  rodShell: ShellSpecification,
  mainShell: ShellSpecification,
  gasketThickness: BaseValue.exactOptional(),
})
