import { DomainError, parseLength, parseQuantity, type ReaderUnit } from '@tenths/domain'
import type { EngineDraft, FieldProblems, JournalDraft, Model, PartsDraft, ShellDraft } from './draft-types.ts'
import { crankMassUnits } from './crank-figures.ts'
import { usualJournals } from './usual-journals.ts'

export type Read<T> = { readonly value: T; readonly problems: null } | { readonly value: null; readonly problems: FieldProblems }

/** Reads an engine that was typed; every figure that cannot be read is blamed at its own field. */
export function readEngine(draft: EngineDraft, unit: ReaderUnit): Read<Model['specification']> {
  const figures = new Figures(unit)
  const hasBanks = draft.arrangement === 'v' || draft.arrangement === 'flat'
  const cylinders = figures.count('engine.cylinders', draft.cylinders)
  const usual = usualJournals(draft.arrangement, cylinders, draft.pinSharing)
  const journals = (path: string, typed: JournalDraft, usualCount: number) => ({
    count: typed.count.trim() === '' ? usualCount : figures.count(`${path}.count`, typed.count),
    diameter: figures.length(`${path}.diameter`, typed.diameter),
    width: figures.length(`${path}.width`, typed.width),
    fillet: figures.lengthIfKnown(`${path}.fillet`, typed.fillet),
    housing: figures.length(`${path}.housing`, typed.housing),
  })
  if (draft.name.trim() === '') figures.blame('engine.name', 'Give it a name that the counter will find it by.')
  return figures.read({
    name: draft.name.trim(),
    arrangement: draft.arrangement,
    cylinders,
    bankAngle: draft.arrangement === 'v' ? figures.angle('engine.bankAngle', draft.bankAngle) : draft.arrangement === 'flat' ? 180_000 : 0,
    numbering: hasBanks ? draft.numbering : 'front-to-back',
    firstBank: hasBanks ? draft.firstBank : null,
    leadingBank: hasBanks ? draft.leadingBank : null,
    rotation: draft.rotation,
    pinSharing: hasBanks ? draft.pinSharing : 'one-rod',
    cooling: draft.cooling,
    ...(draft.block !== 'not-told' && { block: draft.block }),
    ...(draft.boreSurface !== 'not-told' && { boreSurface: draft.boreSurface }),
    ...(draft.cycle !== 'not-told' && { cycle: draft.cycle }),
    ...(draft.ignition !== 'not-told' && { ignition: draft.ignition }),
    ...(draft.greatestSpeed.trim() !== '' && { greatestSpeed: figures.speed('engine.greatestSpeed', draft.greatestSpeed) }),
    bore: figures.length('engine.bore', draft.bore),
    stroke: figures.length('engine.stroke', draft.stroke),
    deckHeight: figures.length('engine.deckHeight', draft.deckHeight),
    mains: journals('engine.mains', draft.mains, usual.mains),
    rodJournals: journals('engine.rodJournals', draft.rodJournals, usual.rodJournals),
    valveTrain: {
      camshaft: draft.valveTrain.camshaft,
      intakeValves: figures.count('engine.valveTrain.intakeValves', draft.valveTrain.intakeValves),
      exhaustValves: figures.count('engine.valveTrain.exhaustValves', draft.valveTrain.exhaustValves),
    },
    ...readHead(draft.head, figures),
    ...readCrank(draft.crank, figures),
  })
}

/** What is known of the heads; nothing where nobody has said anything. */
function readHead({ material, bolts, chamber }: EngineDraft['head'], figures: Figures): Pick<Model['specification'], 'head'> {
  const head = {
    ...(material === 'unknown' ? {} : { material }),
    ...(bolts.trim() === '' ? {} : { bolts: figures.count('engine.head.bolts', bolts) }),
    ...(chamber === 'not-told' ? {} : { chamber }),
  }
  return Object.keys(head).length === 0 ? {} : { head }
}

/** What is known of the crankshaft as a rotor; nothing where nobody has said anything. */
function readCrank({ mass, balanceFactor }: EngineDraft['crank'], figures: Figures): Pick<Model['specification'], 'crank'> {
  const crank = {
    ...(mass.trim() === '' ? {} : { mass: figures.crankMass('engine.crank.mass', mass) }),
    ...(balanceFactor.trim() === '' ? {} : { balanceFactor: figures.share('engine.crank.balanceFactor', balanceFactor) }),
  }
  return Object.keys(crank).length === 0 ? {} : { crank }
}

/** Reads parts that were typed. */
export function readParts(draft: PartsDraft, unit: ReaderUnit): Read<Model['parts']> {
  const figures = new Figures(unit)
  const { piston, pin, rod, retainers } = draft
  const shell = (path: string, typed: ShellDraft) => ({
    width: figures.length(`${path}.width`, typed.width),
    wall: figures.length(`${path}.wall`, typed.wall),
    cheekInset: figures.lengthIfKnown(`${path}.cheekInset`, typed.cheekInset),
    edgeBevel: figures.lengthIfKnown(`${path}.edgeBevel`, typed.edgeBevel),
  })
  return figures.read({
    piston: {
      alloy: piston.alloy,
      diameter: figures.length('parts.piston.diameter', piston.diameter),
      compressionHeight: figures.length('parts.piston.compressionHeight', piston.compressionHeight),
      pinBore: figures.length('parts.piston.pinBore', piston.pinBore),
      pinBoreMouth: figures.lengthIfKnown('parts.piston.pinBoreMouth', piston.pinBoreMouth),
      grooves: piston.grooves.map(({ ring, upperFlank, width }, index) => ({
        ring,
        upperFlank: figures.length(`parts.piston.grooves.${index}.upperFlank`, upperFlank),
        width: figures.length(`parts.piston.grooves.${index}.width`, width),
      })),
      hasFrontMark: piston.hasFrontMark,
      ...(piston.crown !== 'not-told' && { crown: piston.crown }),
    },
    pin: {
      fit: pin.fit,
      diameter: figures.length('parts.pin.diameter', pin.diameter),
      length: figures.length('parts.pin.length', pin.length),
    },
    rod: {
      material: rod.material,
      length: figures.length('parts.rod.length', rod.length),
      bigEndWidth: figures.length('parts.rod.bigEndWidth', rod.bigEndWidth),
      smallEndBore: figures.length('parts.rod.smallEndBore', rod.smallEndBore),
    },
    retainers: retainers.perSide === '0' ? null : {
      perSide: retainers.perSide === '1' ? 1 : 2,
      thickness: figures.length('parts.retainers.thickness', retainers.thickness),
      ...figures.ifTyped('outerFlanks', 'parts.retainers.outerFlanks', retainers.outerFlanks),
    },
    rodShell: shell('parts.rodShell', draft.rodShell),
    mainShell: shell('parts.mainShell', draft.mainShell),
    ...figures.ifTyped('gasketThickness', 'parts.gasketThickness', draft.gasketThickness),
  })
}

/** Reads figure after figure and keeps what is wrong with each, so that all are told at once. */
class Figures {
  readonly #problems: Record<string, string> = {}
  readonly #unit: ReaderUnit

  constructor(unit: ReaderUnit) {
    this.#unit = unit
  }

  blame(path: string, sentence: string): void {
    this.#problems[path] = sentence
  }

  length(path: string, text: string): number {
    if (text.trim() === '') this.blame(path, 'This figure is needed.')
    return text.trim() === '' ? 0 : this.#try(path, () => parseLength(text, this.#unit))
  }

  lengthIfKnown(path: string, text: string): number | null {
    return text.trim() === '' ? null : this.length(path, text)
  }

  /** A figure under its name, left out while nobody has typed it. */
  ifTyped<Name extends string>(name: Name, path: string, text: string): { readonly [K in Name]?: number } {
    return text.trim() === '' ? {} : ({ [name]: this.length(path, text) } as { readonly [K in Name]: number })
  }

  angle(path: string, text: string): number {
    return this.#try(path, () => parseQuantity(text, 'degree'))
  }

  /** Whole milligrams, typed in pounds or kilograms. */
  crankMass(path: string, text: string): number {
    return this.#try(path, () => parseQuantity(text, crankMassUnits[this.#unit]))
  }

  /** Thousandths, typed in per cent with at most one decimal. */
  share(path: string, text: string): number {
    const written = /^(\d{1,3})(?:[.,](\d))?\s*%?$/.exec(text.trim())
    const thousandths = written === null ? NaN : 10 * Number(written[1]) + Number(written[2] ?? 0)
    if (!(thousandths <= 1_000)) this.blame(path, 'A percentage up to 100 is needed here, such as 50 or 36.6.')
    return thousandths || 0
  }

  count(path: string, text: string): number {
    if (!/^\d{1,3}$/.test(text.trim())) this.blame(path, 'A whole number is needed here.')
    return Number.parseInt(text, 10) || 0
  }

  /** Revolutions a minute; people write thousands with a comma, a space or neither. */
  speed(path: string, text: string): number {
    const written = /^(\d{1,2})?[, ]?(\d{3})$/.exec(text.trim())
    if (written === null) this.blame(path, 'Revolutions a minute are needed here, as a whole number such as 7500.')
    return Number(written?.slice(1).join('') ?? 0)
  }

  read<T>(value: T): Read<T> {
    const anything = Object.keys(this.#problems).length > 0
    return anything ? { value: null, problems: this.#problems } : { value, problems: null }
  }

  #try(path: string, read: () => number): number {
    try {
      return read()
    } catch (error) {
      if (!(error instanceof DomainError)) throw error
      this.blame(path, error.message)
      return 0
    }
  }
}
