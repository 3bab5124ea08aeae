import { parseQuantity } from '@tenths/domain'
import { inches, lengthSheet, springSheet, torqueSheet } from '../engines/model.ts'
import { single } from '../engines/single.ts'
import { heavierBy } from '../surprises.ts'
import { freshenUp, fullWork, item, type DemoJob } from './job.ts'

const nothingOrdered = { ...freshenUp, crank: 'none', newRodBolts: false, balance: false } as const

const degrees = (text: string) => parseQuantity(text, 'degree')

/** A full rebuild: head, valves and camshaft with the short block. It is shut up and waits for its last inspection. */
export const jettyEngine: DemoJob = {
  key: 'jetty-engine',
  customer: 'ferryman',
  engine: 'single',
  serial: 'W1-2240',
  duty: 'sustained',
  work: 'full-rebuild',
  wanted: 'Drives the jetty crane all day. Everything new that wears, valves and guides too.',
  notes: 'Gasket of 0.047 in is chosen. Camshaft card is in the file.',
  promisedIn: 6,
  parts: { ...single.parts, gasketThickness: inches('0.0470') },
  options: { ...fullWork, newGuides: true, newSeats: true },
  sheets: [
    torqueSheet('head-bolt-torque', 'poundForceFoot', '28', '32', '30', 'Engine maker’s sheet, Windlow single'),
    {
      fit: 'head-bolt-angle',
      level: 'engine-maker',
      limits: { low: degrees('85'), high: degrees('95'), target: degrees('90'), adviceLow: null, adviceHigh: null },
      source: 'Engine maker’s sheet, Windlow single',
    },
    springSheet('intake-spring-load', 'poundForce', '58', '68', '63', 'Springs’ card, Windlow single'),
    springSheet('exhaust-spring-load', 'poundForce', '58', '68', '63', 'Springs’ card, Windlow single'),
    lengthSheet('intake-lash', 'inch', '0.0080', '0.0120', '0.0100', 'Camshaft card, Windlow single'),
    lengthSheet('exhaust-lash', 'inch', '0.0120', '0.0160', '0.0140', 'Camshaft card, Windlow single'),
  ],
  intake: [item('Single-cylinder engine, complete', 1, 'Smokes, leaks at the guides'), item('Exhaust valve', 1, 'New, boxed')],
  told: ['The head is on and the engine holds its pressure. It is inspected once more before you collect it.'],
  async play(floor) {
    await floor.workThrough('install-heads')
  },
}

/** A head service in millimetres: guides are fitted, seats come next. */
export const headsOnly: DemoJob = {
  key: 'heads-only',
  customer: 'hesper',
  engine: 'inlineFour',
  serial: 'T4-7715-H',
  duty: 'towing',
  work: 'head-service',
  wanted: 'Head of van number 9: valves and guides, dead flat.',
  notes: 'Head alone, off the engine.',
  promisedIn: 9,
  options: nothingOrdered,
  sheets: [
    springSheet('intake-spring-load', 'newton', '265', '305', '285', 'Springs’ card, Tovell four'),
    springSheet('exhaust-spring-load', 'newton', '265', '305', '285', 'Springs’ card, Tovell four'),
  ],
  intake: [item('Cylinder head with rocker cover', 1, 'Cooked: water lost on the road')],
  told: ['No cracks in your head. Guides are fitted, the seats are next.'],
  async play(floor) {
    await floor.workThrough('fit-guides')
  },
}

/** A crank sent in by another shop: ground, and it waits for the wash. */
export const spunCrank: DemoJob = {
  key: 'spun-crank',
  customer: 'ascent',
  engine: 'hillClimbV6',
  serial: 'OV6-0388-C',
  duty: 'mild-boost',
  work: 'crank-regrind',
  wanted: 'Crank of the spare engine: one rod spun. Grind all of it to the next undersize.',
  notes: '',
  promisedIn: 7,
  options: { ...nothingOrdered, crank: 'grind' },
  intake: [item('Crankshaft', 1, 'Rod journal 4 blue')],
  told: ['Your crank is ground and true.'],
  async play(floor) {
    await floor.workThrough('grind-crank')
  },
}

/** Bore and hone alone, waiting for its pistons. */
export const borrowedBlock: DemoJob = {
  key: 'borrowed-block',
  customer: 'otis',
  engine: 'single',
  serial: 'W1-0417',
  duty: 'street',
  work: 'bore-and-hone',
  wanted: 'Bore to the next size and hone to the piston in the box.',
  notes: 'Block only.',
  promisedIn: 20,
  options: { ...nothingOrdered, oversize: true },
  intake: [item('Cylinder block', 1, 'Ridge at the top'), item('Cast piston with pin and rings', 1, 'New, boxed')],
  told: [],
  async play(floor) {
    await floor.workThrough('approve-plan')
  },
}

/** Balancing alone: one piston of a mixed set is heavier than the others, and the crank is not spun before it is lightened. */
export const mixedPistons: DemoJob = {
  key: 'mixed-pistons',
  customer: 'tilda',
  engine: 'streetV8',
  serial: 'FV8-0093-B',
  duty: 'street',
  work: 'balancing',
  wanted: 'Balance the rotating parts of the spare engine. One piston came from another box.',
  notes: 'Crank, rods, pistons and one set each of rings and shells are in the crate.',
  promisedIn: 13,
  options: { ...nothingOrdered, balance: true },
  intake: [
    item('Crankshaft', 1, 'Ground by another shop'), item('Rods with bolts', 8, 'Marked 1 to 8'),
    item('Cast pistons with pins', 8, 'Seven of one box, one of another'), item('Rings and rod shells, one set', 1, 'New, boxed'),
  ],
  told: ['Everything is weighed. One piston is heavier than the others and comes down to them before the crank is spun.'],
  async play(floor) {
    await floor.workThrough('approve-plan')
    await floor.beginOn('balance', 'crankshaft#unbalance', { 'piston/3#weight': heavierBy('2.4') })
  },
}
