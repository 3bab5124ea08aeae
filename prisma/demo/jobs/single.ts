import { freshenUp, item, type DemoJob } from './job.ts'

/** Finished and inspected: it waits to be collected. */
export const pumpEngine: DemoJob = {
  key: 'pump-engine',
  customer: 'pumphouse',
  engine: 'single',
  serial: 'W1-1902',
  duty: 'restoration',
  wanted: 'The pump must run on open day. Piston, rings, bearings; keep the paint.',
  notes: 'Volunteers collect with their own trailer.',
  promisedIn: 0,
  options: freshenUp,
  intake: [item('Single-cylinder engine with flywheels', 1, 'Runs, knocks'), item('Magneto', 1, 'Weak spark')],
  told: ['It is finished and turns like a clock. Collect it when it suits you.'],
  async play(floor) {
    await floor.workThrough('final-inspection')
  },
}

/** Came in this morning: tagged, nothing taken apart, makers' sheets not in the house. */
export const justIn: DemoJob = {
  key: 'just-in',
  customer: 'dunstan',
  engine: 'single',
  serial: '',
  duty: 'street',
  wanted: 'Saw-bench engine. Hard to start, no pull.',
  notes: 'Number plate is missing.',
  promisedIn: 28,
  options: freshenUp,
  intake: [item('Single-cylinder engine', 1, 'Number plate missing, governor seized')],
  told: [],
  sheetsMissing: true,
  async play(floor) {
    await floor.workThrough('receive')
  },
}
