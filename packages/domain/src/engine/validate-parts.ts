import { NANOMETRES_PER_INCH } from '../exact/length.ts'
import { refuse, requireLength } from './refusal.ts'
import type {
  EngineSpecification,
  JournalSpecification,
  PartsSpecification,
  ShellSpecification,
} from './specification.ts'
import { validateEngine } from './validate.ts'

/** Rod length over stroke that can be built, in thousandths (from memory). */
const LEAST_ROD_RATIO = 1_200
const GREATEST_ROD_RATIO = 2_800

/** How far a nominal pin bore may lie from its pin before the two figures belong to different parts. */
const PIN_BORE_SLACK = NANOMETRES_PER_INCH / 50

/**
 * Refuses parts that cannot be put together in this engine, whatever their exact sizes.
 * @throws DomainError `engine-impossible` with the field, as a path such as `parts.rod.length`, and a
 *   sentence.
 */
export function validateCombination(engine: EngineSpecification, parts: PartsSpecification): void {
  validateEngine(engine)
  validateRod(engine, parts)
  validatePiston(engine, parts)
  validateShell(parts.rodShell, engine.rodJournals, 'parts.rodShell')
  validateShell(parts.mainShell, engine.mains, 'parts.mainShell')
  if (parts.gasketThickness !== undefined) validateGasket(parts.gasketThickness)
  validateRetainers(parts)
}

/** No head gasket is as thick as half an inch: the usual slip is a decimal place. */
function validateGasket(thickness: number): void {
  requireLength(thickness, 'parts.gasketThickness')
  if (thickness > NANOMETRES_PER_INCH / 2) {
    refuse('parts.gasketThickness', 'A head gasket this thick is not made: check the decimal point.')
  }
}

function validateRetainers({ retainers }: PartsSpecification): void {
  if (retainers === null) return
  requireLength(retainers.thickness, 'parts.retainers.thickness')
  if (retainers.outerFlanks !== undefined) requireLength(retainers.outerFlanks, 'parts.retainers.outerFlanks')
}

function validateRod(engine: EngineSpecification, { rod }: PartsSpecification): void {
  for (const field of ['length', 'bigEndWidth', 'smallEndBore'] as const) {
    requireLength(rod[field], `parts.rod.${field}`)
  }
  if (rod.length * 1_000 < engine.stroke * LEAST_ROD_RATIO) {
    refuse(
      'parts.rod.length',
      'This rod is too short for the stroke: it must be at least 1.2 strokes long.',
    )
  }
  if (rod.length * 1_000 > engine.stroke * GREATEST_ROD_RATIO) {
    refuse('parts.rod.length', 'This rod is too long for the stroke: at most 2.8 strokes can be built.')
  }
  const rodsBeside = engine.pinSharing === 'two-plain-rods' ? 2 : 1
  if (rodsBeside * rod.bigEndWidth >= engine.rodJournals.width) {
    refuse(
      'parts.rod.bigEndWidth',
      rodsBeside === 2
        ? 'Two of these rods do not fit between the cheeks of one crankpin.'
        : 'This rod does not fit between the cheeks of its crankpin.',
    )
  }
}

function validatePiston(engine: EngineSpecification, { piston, pin }: PartsSpecification): void {
  for (const field of ['diameter', 'compressionHeight', 'pinBore'] as const) {
    requireLength(piston[field], `parts.piston.${field}`)
  }
  requireLength(pin.diameter, 'parts.pin.diameter')
  requireLength(pin.length, 'parts.pin.length')
  if (piston.diameter >= engine.bore) {
    refuse('parts.piston.diameter', 'The piston does not enter its bore.')
  }
  if (pin.length >= engine.bore) refuse('parts.pin.length', 'The pin is longer than the bore is wide.')
  if (Math.abs(piston.pinBore - pin.diameter) > PIN_BORE_SLACK) {
    refuse('parts.piston.pinBore', 'Pin bore and pin are of different sizes.')
  }
  if (2 * piston.compressionHeight <= piston.pinBore) {
    refuse('parts.piston.compressionHeight', 'The pin bore would break through the crown.')
  }
  if (piston.pinBoreMouth !== null && piston.pinBoreMouth < piston.pinBore) {
    refuse('parts.piston.pinBoreMouth', 'The mouth of the pin bore cannot be smaller than the bore itself.')
  }
  validateGrooves(piston)
}

function validateGrooves(piston: PartsSpecification['piston']): void {
  let landBegins = 0
  for (const [index, groove] of piston.grooves.entries()) {
    const field = `parts.piston.grooves.${index}`
    requireLength(groove.upperFlank, `${field}.upperFlank`)
    requireLength(groove.width, `${field}.width`)
    if (groove.upperFlank <= landBegins) {
      refuse(`${field}.upperFlank`, 'The grooves overlap, or are not listed from the top.')
    }
    landBegins = groove.upperFlank + groove.width
  }
}

function validateShell(shell: ShellSpecification, journals: JournalSpecification, field: string): void {
  requireLength(shell.width, `${field}.width`)
  requireLength(shell.wall, `${field}.wall`)
  if (shell.width > journals.width) refuse(`${field}.width`, 'The bearing is wider than its journal.')
  if (2 * shell.wall >= journals.housing) {
    refuse(`${field}.wall`, 'The shells would fill the whole housing.')
  }
}
