import { NANOMETRES_PER_INCH } from '../exact/length.ts'
import { hasTwoBanks, rodJournalCount, throwCount } from './cylinder-counts.ts'
import { refuse, requireLength } from './refusal.ts'
import type { Arrangement, EngineSpecification, JournalSpecification } from './specification.ts'

/** Cylinder counts that are built, by arrangement. Common practice, no source. */
const cylinderCounts: Record<
  Arrangement,
  { least: number; greatest: number; even: boolean; words: string }
> = {
  single: { least: 1, greatest: 1, even: false, words: 'A single has one cylinder' },
  inline: { least: 1, greatest: 8, even: false, words: 'An inline engine has 1 to 8 cylinders' },
  v: {
    least: 2,
    greatest: 16,
    even: true,
    words: 'A V engine has an even number of cylinders from 2 to 16',
  },
  flat: {
    least: 2,
    greatest: 12,
    even: true,
    words: 'A flat engine has an even number of cylinders from 2 to 12',
  },
}

/**
 * Refuses an engine that cannot exist; a silent return means that layout and plan can be computed from it.
 * @throws DomainError `engine-impossible` with the field, as a path such as `engine.bankAngle`, and a
 *   sentence.
 */
export function validateEngine(engine: EngineSpecification): void {
  validateCylinders(engine)
  validateBanks(engine)
  for (const field of ['bore', 'stroke', 'deckHeight'] as const) {
    requireLength(engine[field], `engine.${field}`)
  }
  validateJournals(engine.mains, 'engine.mains')
  validateJournals(engine.rodJournals, 'engine.rodJournals')
  validateJournalCounts(engine)
  validateValveTrain(engine)
  validateHead(engine)
  validateSpeed(engine)
  validateCrank(engine)
  if (engine.deckHeight <= engine.stroke) {
    refuse(
      'engine.deckHeight',
      'The deck cannot be nearer to the crank than one stroke: rod and piston have no room.',
    )
  }
}

function validateCylinders(engine: EngineSpecification): void {
  const counts = cylinderCounts[engine.arrangement]
  const { cylinders } = engine
  const built = Number.isInteger(cylinders) && cylinders >= counts.least && cylinders <= counts.greatest
  if (!built || (counts.even && cylinders % 2 !== 0)) {
    refuse('engine.cylinders', `${counts.words}, not ${cylinders}.`)
  }
}

function validateBanks(engine: EngineSpecification): void {
  const twoBanks = hasTwoBanks(engine)
  const { bankAngle, numbering, firstBank, leadingBank } = engine
  if (engine.arrangement === 'v' && !(bankAngle > 0 && bankAngle < 180_000)) {
    refuse('engine.bankAngle', 'The banks of a V engine stand between 0 and 180 degrees apart.')
  }
  if (engine.arrangement === 'flat' && bankAngle !== 180_000) {
    refuse('engine.bankAngle', 'The banks of a flat engine stand 180 degrees apart.')
  }
  if (!twoBanks && bankAngle !== 0) refuse('engine.bankAngle', 'An engine with one bank has no bank angle.')
  if (twoBanks === (numbering === 'front-to-back')) {
    refuse(
      'engine.numbering',
      twoBanks
        ? 'Two banks are numbered by bank or alternating, not in one row.'
        : 'One row of cylinders is numbered front to back.',
    )
  }
  if (twoBanks !== (firstBank !== null)) {
    refuse('engine.firstBank', twoBanks ? 'Say on which bank cylinder 1 is.' : 'There is only one bank.')
  }
  if (twoBanks !== (leadingBank !== null)) {
    refuse(
      'engine.leadingBank',
      twoBanks ? 'Say which bank stands further forward.' : 'There is only one bank.',
    )
  }
  if (!twoBanks && engine.pinSharing !== 'one-rod') {
    refuse('engine.pinSharing', 'With one bank every rod has a crankpin of its own.')
  }
}

function validateJournals(journals: JournalSpecification, field: string): void {
  requireLength(journals.diameter, `${field}.diameter`)
  requireLength(journals.width, `${field}.width`)
  requireLength(journals.housing, `${field}.housing`)
  if (journals.housing <= journals.diameter) {
    refuse(`${field}.housing`, 'The housing must be larger than its journal: the shells lie between them.')
  }
  if (journals.fillet === null) return
  if (journals.fillet < 0 || 2 * journals.fillet >= journals.width) {
    refuse(`${field}.fillet`, 'Two fillets cannot be as wide as the whole journal.')
  }
  // A fillet of half an inch would leave no cheek; the usual slip is a decimal place.
  if (journals.fillet > NANOMETRES_PER_INCH / 2) {
    refuse(`${field}.fillet`, 'A fillet this large is not ground.')
  }
}

function validateJournalCounts(engine: EngineSpecification): void {
  const rodJournals = rodJournalCount(engine)
  if (engine.rodJournals.count !== rodJournals) {
    refuse(
      'engine.rodJournals.count',
      `${engine.cylinders} cylinders on such pins make ${rodJournals} rod journals.`,
    )
  }
  // One main beside each throw, one more for the last, and one outboard at the most.
  const mostMains = throwCount(engine) + 2
  const { count } = engine.mains
  if (!Number.isInteger(count) || count < 2 || count > mostMains) {
    refuse('engine.mains.count', `This crank can have 2 to ${mostMains} main journals, not ${count}.`)
  }
}

/** The most valves of one kind that a cylinder is built with. Common practice, no source. */
const mostValves = 3

function validateValveTrain({ valveTrain }: EngineSpecification): void {
  if (valveTrain === undefined) return
  for (const field of ['intakeValves', 'exhaustValves'] as const) {
    const count = valveTrain[field]
    if (!Number.isInteger(count) || count < 1 || count > mostValves) {
      refuse(`engine.valveTrain.${field}`, `A cylinder has 1 to ${mostValves} valves of a kind, not ${count}.`)
    }
  }
}

/** What a crank is turned at, at the most. Common practice, no source: the usual slip is a digit. */
const leastTopSpeed = 100
const mostTopSpeed = 30_000

function validateSpeed({ greatestSpeed }: EngineSpecification): void {
  if (greatestSpeed === undefined) return
  if (!Number.isInteger(greatestSpeed) || greatestSpeed < leastTopSpeed || greatestSpeed > mostTopSpeed) {
    refuse('engine.greatestSpeed', 'The greatest speed of an engine lies between 100 and 30,000 revolutions a minute.')
  }
}

/** From 0.2 kg, a model's, to 2 t, a ship's: what lies outside is a slip of the decimal point. From memory. */
const [leastCrankMass, mostCrankMass] = [200_000, 2_000_000_000]

function validateCrank({ crank }: EngineSpecification): void {
  if (crank?.mass !== undefined
    && !(Number.isSafeInteger(crank.mass) && crank.mass >= leastCrankMass && crank.mass <= mostCrankMass)) {
    refuse('engine.crank.mass', 'A crankshaft weighs between 0.2 kg and 2,000 kg: check unit and decimal point.')
  }
  const factor = crank?.balanceFactor
  if (factor !== undefined && !(Number.isInteger(factor) && factor >= 0 && factor <= 1_000)) {
    refuse('engine.crank.balanceFactor', 'The balance factor is a share of the reciprocating weight, from 0 to 100 %.')
  }
}

/** The most bolts that one head is held by: eight cylinders in line with six around each. */
const mostHeadBolts = 48

function validateHead({ head }: EngineSpecification): void {
  const bolts = head?.bolts
  if (bolts === undefined) return
  if (!Number.isInteger(bolts) || bolts < 2 || bolts > mostHeadBolts) {
    refuse('engine.head.bolts', `A head is held by 2 to ${mostHeadBolts} bolts, not ${bolts}.`)
  }
}
