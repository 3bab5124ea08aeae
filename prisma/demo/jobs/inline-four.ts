import { unmeasuredShells } from '../engines/inline-four.ts'
import { freshenUp, fullWork, item, type DemoJob } from './job.ts'

/** In millimetres, nearly together: the rod bolts come next, two people. */
export const deliveryVan: DemoJob = {
  key: 'delivery-van',
  customer: 'hesper',
  engine: 'inlineFour',
  serial: 'T4-7715',
  duty: 'towing',
  wanted: 'Van number 7. Same as the last two: forged pistons, new bearings, back on the road.',
  notes: 'Invoice to the workshop, reference van 7.',
  promisedIn: 2,
  options: fullWork,
  intake: [item('Four-cylinder engine', 1, 'Head gasket blown, bores worn'), item('Clutch', 1, 'Burnt')],
  told: ['Pistons are in. It is finished this week.'],
  async play(floor) {
    await floor.workThrough('install-pistons')
    await floor.startClock('final-rod-bolts')
  },
}

/** Bearings from an unmarked box: whether they clear the fillet is unknown until somebody measures them. */
export const unmeasuredBox: DemoJob = {
  key: 'unmeasured-box',
  customer: 'hesper',
  engine: 'inlineFour',
  serial: 'T4-7702',
  duty: 'street',
  wanted: 'Van number 3, spare engine. No hurry.',
  notes: 'Bearings are from a box without a label.',
  promisedIn: 60,
  parts: unmeasuredShells,
  options: freshenUp,
  intake: [item('Four-cylinder engine', 1, 'Stood outside'), item('Bearings in a plain box', 10, 'Unmarked', 'customer')],
  told: [],
  async play(floor) {
    await floor.workThrough('crack-test')
    await floor.workOn('measure-block')
    await floor.startClock('measure-crank')
  },
}
