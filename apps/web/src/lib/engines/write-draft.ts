import { valveTrainOf, type JournalSpecification, type PartsSpecification, type ReaderUnit, type ShellSpecification } from '@tenths/domain'
import type { EngineDraft, JournalDraft, Model, PartsDraft, ShellDraft } from './draft-types.ts'
import { massText } from './crank-figures.ts'
import { lengthText } from './length-text.ts'

type Plain<T> = T extends number ? number : T extends object ? { readonly [K in keyof T]: Plain<T[K]> } : T

const emptyJournals = (): JournalDraft => ({ count: '', diameter: '', width: '', fillet: '', housing: '' })
const emptyShell = (): ShellDraft => ({ width: '', wall: '', cheekInset: '', edgeBevel: '' })

/** An engine of which nothing is typed yet. */
export function emptyEngine(): EngineDraft {
  return {
    name: '', arrangement: 'v', cylinders: '8', bankAngle: '90', numbering: 'by-bank', firstBank: 'viewer-right',
    leadingBank: 'viewer-right', rotation: 'clockwise', pinSharing: 'two-plain-rods', cooling: 'water', block: 'not-told',
    boreSurface: 'not-told', cycle: 'not-told', ignition: 'not-told', greatestSpeed: '',
    bore: '', stroke: '', deckHeight: '', mains: emptyJournals(), rodJournals: emptyJournals(),
    valveTrain: { camshaft: 'in-block', intakeValves: '1', exhaustValves: '1' }, head: { material: 'unknown', bolts: '', chamber: 'not-told' },
    crank: { mass: '', balanceFactor: '' },
  }
}

/** Parts of which nothing is typed yet. */
export function emptyParts(): PartsDraft {
  const groove = (ring: 'top' | 'second' | 'oil') => ({ ring, upperFlank: '', width: '' })
  return {
    piston: {
      alloy: 'hypereutectic', diameter: '', compressionHeight: '', pinBore: '', pinBoreMouth: '',
      grooves: [groove('top'), groove('second'), groove('oil')], hasFrontMark: true, crown: 'not-told',
    },
    pin: { fit: 'floating', diameter: '', length: '' },
    rod: { material: 'steel', length: '', bigEndWidth: '', smallEndBore: '' },
    retainers: { perSide: '1', thickness: '', outerFlanks: '' },
    rodShell: emptyShell(),
    mainShell: emptyShell(),
    gasketThickness: '',
  }
}

/** An engine of the library, to be typed over. */
export function engineDraftOf(engine: Model['specification'], unit: ReaderUnit): EngineDraft {
  const train = valveTrainOf(engine)
  return {
    ...engine,
    cylinders: String(engine.cylinders),
    bankAngle: String(engine.bankAngle / 1000),
    firstBank: engine.firstBank ?? 'viewer-right',
    leadingBank: engine.leadingBank ?? 'viewer-right',
    block: engine.block ?? 'not-told',
    boreSurface: engine.boreSurface ?? 'not-told',
    cycle: engine.cycle ?? 'not-told',
    ignition: engine.ignition ?? 'not-told',
    greatestSpeed: String(engine.greatestSpeed ?? ''),
    bore: lengthText(engine.bore, unit),
    stroke: lengthText(engine.stroke, unit),
    deckHeight: lengthText(engine.deckHeight, unit),
    mains: journalDraftOf(engine.mains, unit),
    rodJournals: journalDraftOf(engine.rodJournals, unit),
    valveTrain: {
      camshaft: train.camshaft,
      intakeValves: String(train.intakeValves),
      exhaustValves: String(train.exhaustValves),
    },
    head: {
      material: engine.head?.material ?? 'unknown',
      bolts: String(engine.head?.bolts ?? ''),
      chamber: engine.head?.chamber ?? 'not-told',
    },
    crank: {
      mass: engine.crank?.mass === undefined ? '' : massText(engine.crank.mass, unit),
      balanceFactor: engine.crank?.balanceFactor === undefined ? '' : String(engine.crank.balanceFactor / 10),
    },
  }
}

/** Parts of the library or of a plan, to be typed over. */
export function partsDraftOf(parts: Plain<PartsSpecification>, unit: ReaderUnit): PartsDraft {
  const text = (value: number | null): string => (value === null ? '' : lengthText(value, unit))
  const { piston, pin, rod, retainers } = parts
  return {
    piston: {
      alloy: piston.alloy,
      diameter: text(piston.diameter),
      compressionHeight: text(piston.compressionHeight),
      pinBore: text(piston.pinBore),
      pinBoreMouth: text(piston.pinBoreMouth),
      grooves: piston.grooves.map(({ ring, upperFlank, width }) => ({ ring, upperFlank: text(upperFlank), width: text(width) })),
      hasFrontMark: piston.hasFrontMark,
      crown: piston.crown ?? 'not-told',
    },
    pin: { fit: pin.fit, diameter: text(pin.diameter), length: text(pin.length) },
    rod: {
      material: rod.material,
      length: text(rod.length),
      bigEndWidth: text(rod.bigEndWidth),
      smallEndBore: text(rod.smallEndBore),
    },
    retainers: {
      perSide: retainers === null ? '0' : retainers.perSide === 1 ? '1' : '2',
      thickness: text(retainers?.thickness ?? null),
      outerFlanks: text(retainers?.outerFlanks ?? null),
    },
    rodShell: shellDraftOf(parts.rodShell, unit),
    mainShell: shellDraftOf(parts.mainShell, unit),
    gasketThickness: text(parts.gasketThickness ?? null),
  }
}

function journalDraftOf(journals: Plain<JournalSpecification>, unit: ReaderUnit): JournalDraft {
  return {
    count: String(journals.count),
    diameter: lengthText(journals.diameter, unit),
    width: lengthText(journals.width, unit),
    fillet: journals.fillet === null ? '' : lengthText(journals.fillet, unit),
    housing: lengthText(journals.housing, unit),
  }
}

function shellDraftOf(shell: Plain<ShellSpecification>, unit: ReaderUnit): ShellDraft {
  return {
    width: lengthText(shell.width, unit),
    wall: lengthText(shell.wall, unit),
    cheekInset: shell.cheekInset === null ? '' : lengthText(shell.cheekInset, unit),
    edgeBevel: shell.edgeBevel === null ? '' : lengthText(shell.edgeBevel, unit),
  }
}
