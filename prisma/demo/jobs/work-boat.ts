import { offBy } from '../surprises.ts'
import { freshenUp, fullWork, item, type DemoJob } from './job.ts'

/** Promised last week: one rod bearing came out tight, and thinner shells are on their way. */
export const lateBoat: DemoJob = {
  key: 'late-boat',
  customer: 'saltmarsh',
  engine: 'workBoatV8',
  serial: 'BW8-2210',
  duty: 'sustained',
  wanted: 'Hire launch lost oil pressure when hot. Bearings, rings, whatever it needs to run all day at three quarters.',
  notes: 'The launch earns nothing while the engine is here.',
  promisedIn: -6,
  options: freshenUp,
  intake: [
    item('V8 marine engine without manifolds', 1, 'Salt on the outside, oil clean'),
    item('Flywheel with ring gear', 1, 'Two teeth worn'),
  ],
  told: [
    'Bearings were worn through to the backing; crank and block are sound.',
    'We are late, and sorry: one new bearing is too tight and a thinner one is ordered. We ring you when it is here.',
  ],
  async play(floor) {
    await floor.workThrough('main-bearings')
    await floor.workOn('rod-bearings', { 'rod-bearing/6#bore': offBy('-0.0005') })
  },
}

/** One bore ended a little wide, and the owner let it pass with a reason. */
export const concededBore: DemoJob = {
  key: 'conceded-bore',
  customer: 'ferryman',
  engine: 'workBoatV8',
  serial: 'BW8-1974',
  duty: 'sustained',
  wanted: 'Full overhaul over the winter, to last ten years.',
  notes: 'Wants the old parts back in a box.',
  promisedIn: 6,
  options: fullWork,
  intake: [item('V8 marine engine, complete', 1, 'Seized for years, now free'), item('Heat exchanger', 1, 'Leaks')],
  told: ['Cylinders are bored and honed to your new pistons.', 'Everything is machined and washed: rings and bearings are fitted this week.'],
  async play(floor) {
    await floor.workThrough('bore')
    await floor.workOn('hone-bores', { 'block#bore-7': offBy('0.0013') })
    const finding = await floor.ask(
      'hone-bores', 'piston-in-bore/7', 'Bore 7 ended wide',
      'The stone dug in at the bottom while the last tenths came off. A larger piston is six weeks away.',
    )
    await floor.decide(
      finding, 'concession', 'A little more room in one bore of an engine that runs hot does no harm; the customer was told and agrees.',
    )
    await floor.sign('hone-bores')
    await floor.workThrough('wash-for-measuring')
  },
}

/** The later crank has a rolled fillet, and the shells in the box foul it: found before metal is cut. */
export const foulingShells: DemoJob = {
  key: 'fouling-shells',
  customer: 'netmaker',
  engine: 'workBoatV8RolledFillet',
  serial: 'BW8-3061',
  duty: 'sustained',
  wanted: 'Crank was replaced by one from a later engine. Build it up with the bearings that we bring.',
  notes: 'Fishing starts again in seven weeks.',
  promisedIn: 40,
  options: freshenUp,
  intake: [
    item('V8 marine block with heads off', 1, 'Sound'),
    item('Crankshaft of a later engine', 1, 'Rolled fillets, crankpins standard'),
    item('Rod bearings', 8, 'Wide pattern, boxed'),
  ],
  told: ['Before we cut anything: your bearings do not go with this crank. We look for narrower ones and ring you.'],
  async play(floor) {
    await floor.workThrough('measure-rods')
  },
}
