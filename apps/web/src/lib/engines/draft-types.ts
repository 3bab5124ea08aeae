import type { EngineModel } from '@tenths/contract'
import type {
  BlockMaterial, BoreSurface, CamshaftPlace, Chamber, Cycle, EngineSpecification, HeadMaterial, Ignition, PartsSpecification, PistonCrown,
  RingGroove,
} from '@tenths/domain'
import type { z } from 'zod'

export type Model = z.infer<typeof EngineModel>

/** An engine as it is being typed: every figure still text, in the unit of the page; empty where nobody knows. */
export interface EngineDraft extends Pick<
  EngineSpecification, 'name' | 'arrangement' | 'numbering' | 'rotation' | 'pinSharing' | 'cooling'
> {
  block: BlockMaterial | 'not-told'
  boreSurface: BoreSurface | 'not-told'
  cycle: Cycle | 'not-told'
  ignition: Ignition | 'not-told'
  /** Revolutions a minute. */
  greatestSpeed: string
  cylinders: string
  /** Degrees. */
  bankAngle: string
  firstBank: 'viewer-left' | 'viewer-right'
  leadingBank: 'viewer-left' | 'viewer-right'
  bore: string
  stroke: string
  deckHeight: string
  mains: JournalDraft
  rodJournals: JournalDraft
  /** Of each cylinder. */
  valveTrain: { camshaft: CamshaftPlace; intakeValves: string; exhaustValves: string }
  /** The crankshaft as a rotor: pounds or kilograms, and per cent. */
  crank: { mass: string; balanceFactor: string }
  head: { material: HeadMaterial | 'unknown'; bolts: string; chamber: Chamber | 'not-told' }
}

export interface JournalDraft {
  count: string
  diameter: string
  width: string
  fillet: string
  housing: string
}

/** The parts as they are being typed. */
export interface PartsDraft {
  piston: {
    alloy: PartsSpecification['piston']['alloy']
    diameter: string
    compressionHeight: string
    pinBore: string
    pinBoreMouth: string
    grooves: { ring: RingGroove['ring']; upperFlank: string; width: string }[]
    hasFrontMark: boolean
    crown: PistonCrown | 'not-told'
  }
  pin: { fit: PartsSpecification['pin']['fit']; diameter: string; length: string }
  rod: { material: PartsSpecification['rod']['material']; length: string; bigEndWidth: string; smallEndBore: string }
  retainers: { perSide: '0' | '1' | '2'; thickness: string; outerFlanks: string }
  rodShell: ShellDraft
  mainShell: ShellDraft
  gasketThickness: string
}

export interface ShellDraft {
  width: string
  wall: string
  cheekInset: string
  edgeBevel: string
}

/** Sentences by field path, as the domain and the API name fields: `engine.bore`, `parts.rod.length`. */
export type FieldProblems = Readonly<Record<string, string>>
