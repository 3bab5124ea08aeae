import type { Nanometres } from '../exact/length.ts'

/** How the cylinders stand. A single is one cylinder; a flat engine's banks face each other. */
export const arrangements = ['single', 'inline', 'v', 'flat'] as const
export type Arrangement = (typeof arrangements)[number]

/**
 * How cylinders are numbered: `front-to-back` in one row (inline); `by-bank` all of one bank, then all of
 * the other; `alternating` front to back changing bank each time (odd numbers on the bank of cylinder 1).
 */
export const numberings = ['front-to-back', 'by-bank', 'alternating'] as const
export type Numbering = (typeof numberings)[number]

/**
 * A side, always as a viewer standing in front of the engine and facing it sees it: never stored without
 * that viewpoint.
 */
export const viewerSides = ['viewer-left', 'viewer-right'] as const
export type ViewerSide = (typeof viewerSides)[number]

/** Turning direction of the crank for a viewer in front of the engine, facing it. */
export const rotations = ['clockwise', 'counterclockwise'] as const
export type Rotation = (typeof rotations)[number]

/**
 * What sits on one crankpin. Only `two-plain-rods` gives a rod a side that must face the cheek; it is data,
 * never inferred from the arrangement.
 */
export const pinSharings = ['one-rod', 'two-plain-rods', 'split-pin', 'fork-and-blade'] as const
export type PinSharing = (typeof pinSharings)[number]

export const pistonAlloys = ['cast', 'hypereutectic', '4032', '2618'] as const
export type PistonAlloy = (typeof pistonAlloys)[number]
export const rodMaterials = ['steel', 'aluminium'] as const
export type RodMaterial = (typeof rodMaterials)[number]
export const pinFits = ['floating', 'pressed'] as const
export type PinFit = (typeof pinFits)[number]
export const coolings = ['water', 'air'] as const
export const blockMaterials = ['iron', 'aluminium-with-liners'] as const
export type BlockMaterial = (typeof blockMaterials)[number]
export type Cooling = (typeof coolings)[number]
/** What a bore's wall is: the block's own metal or a liner that is bored like it, a sleeve, or a plating. */
export const boreSurfaces = ['plain', 'sleeved', 'plated'] as const
export type BoreSurface = (typeof boreSurfaces)[number]
export const cycles = ['four-stroke', 'two-stroke'] as const
export type Cycle = (typeof cycles)[number]
export const ignitions = ['spark', 'diesel'] as const
export type Ignition = (typeof ignitions)[number]
/** A closed chamber has a flat that the piston's crown comes close to; an open one is as wide as the bore. */
export const chambers = ['closed', 'open'] as const
export type Chamber = (typeof chambers)[number]
export const pistonCrowns = ['flat', 'dished', 'domed'] as const
export type PistonCrown = (typeof pistonCrowns)[number]

/** One journal family of the crank: all mains or all rod journals share these nominal figures. */
export interface JournalSpecification {
  readonly count: number
  readonly diameter: Nanometres
  /** Between the cheeks, flat to flat. */
  readonly width: Nanometres
  /** Fillet radius at the cheek; null while nobody has measured it. */
  readonly fillet: Nanometres | null
  /** Bore of the torqued housing without shells. */
  readonly housing: Nanometres
}

export const camshaftPlaces = ['in-block', 'overhead'] as const
export type CamshaftPlace = (typeof camshaftPlaces)[number]

/** Valves of each cylinder, and where the camshaft runs. */
export interface ValveTrain {
  readonly camshaft: CamshaftPlace
  readonly intakeValves: number
  readonly exhaustValves: number
}

export const headMaterials = ['iron', 'aluminium'] as const
export type HeadMaterial = (typeof headMaterials)[number]

/** The heads of an engine, all alike. */
export interface HeadSpecification {
  /** Left out while nobody has said: what hangs on it then waits. */
  readonly material?: HeadMaterial
  /** Bolts or studs of one head; left out, four around each cylinder, neighbours sharing two. */
  readonly bolts?: number
  /** Left out while nobody has said: quench is then held as in a closed one. */
  readonly chamber?: Chamber
}

/** The crankshaft as a rotor; each figure is left out while nobody has said. */
export interface CrankSpecification {
  /** Milligrams, bare. */
  readonly mass?: number
  /** Share of the reciprocating weight that its maker balances by, in thousandths: 500 is a half. */
  readonly balanceFactor?: number
}

/** What the arithmetic must know of an engine; the shop's library keeps these, a job copies one. */
export interface EngineSpecification {
  readonly name: string
  readonly arrangement: Arrangement
  readonly cylinders: number
  /** Angle between banks in thousandths of a degree: 0 in line or single, 180 000 flat. */
  readonly bankAngle: number
  readonly numbering: Numbering
  /**
   * Bank of cylinder 1, and bank whose rods stand in front on each shared pin; null where there is one
   * bank.
   */
  readonly firstBank: ViewerSide | null
  readonly leadingBank: ViewerSide | null
  readonly rotation: Rotation
  readonly pinSharing: PinSharing
  readonly cooling: Cooling
  /** Left out while nobody has said: its readings are then never corrected for temperature. */
  readonly block?: BlockMaterial
  /** Left out: plain. */
  readonly boreSurface?: BoreSurface
  /** Left out while nobody has said: judged as a four-stroke, and as fired by a spark. */
  readonly cycle?: Cycle
  readonly ignition?: Ignition
  /** The most that the engine will turn, in revolutions a minute; left out while nobody has said. */
  readonly greatestSpeed?: number
  readonly bore: Nanometres
  readonly stroke: Nanometres
  /** Main-bore centreline to deck. */
  readonly deckHeight: Nanometres
  readonly mains: JournalSpecification
  readonly rodJournals: JournalSpecification
  /** Left out: one intake and one exhaust valve a cylinder, the camshaft in the block. */
  readonly valveTrain?: ValveTrain
  readonly head?: HeadSpecification
  readonly crank?: CrankSpecification
}

/**
 * A ring groove: upper flank's depth below the flat that compression height is measured to, and the
 * groove's width.
 */
export interface RingGroove {
  readonly ring: 'top' | 'second' | 'oil'
  readonly upperFlank: Nanometres
  readonly width: Nanometres
}

/** The parts this job will put together; null where nobody has measured or asked yet. */
export interface PartsSpecification {
  readonly piston: {
    readonly alloy: PistonAlloy
    readonly diameter: Nanometres
    readonly compressionHeight: Nanometres
    readonly pinBore: Nanometres
    /** Largest diameter of the pin bore's mouth, chamfer or counterbore included. */
    readonly pinBoreMouth: Nanometres | null
    readonly grooves: readonly RingGroove[]
    /** Whether the crown carries a mark that must point to the front. */
    readonly hasFrontMark: boolean
    /** Left out while nobody has said: quench is then held as over a flat one. */
    readonly crown?: PistonCrown
  }
  readonly pin: { readonly fit: PinFit; readonly diameter: Nanometres; readonly length: Nanometres }
  readonly rod: {
    readonly material: RodMaterial
    readonly length: Nanometres
    readonly bigEndWidth: Nanometres
    readonly smallEndBore: Nanometres
  }
  /**
   * Flat retaining rings; null for wire. `outerFlanks`, between the grooves' outer flanks, is left out
   * until measured.
   */
  readonly retainers: {
    readonly perSide: 1 | 2
    readonly thickness: Nanometres
    readonly outerFlanks?: Nanometres
  } | null
  readonly rodShell: ShellSpecification
  readonly mainShell: ShellSpecification
  /** Compressed thickness of the head gasket; left out while nobody has chosen one. */
  readonly gasketThickness?: Nanometres
}

/** A bearing shell against its fillet: figures come off parts in hand; null is *unknown*, never clear. */
export interface ShellSpecification {
  readonly width: Nanometres
  readonly wall: Nanometres
  /** From the rod's (or housing's) face on the cheek side to the shell's edge. */
  readonly cheekInset: Nanometres | null
  readonly edgeBevel: Nanometres | null
}
