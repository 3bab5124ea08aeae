import { clearanceBySizes, clearanceOnMate } from '../surprises.ts'
import { fullWork, item, type DemoJob } from './job.ts'

/** Hard boost: one bushing is found at 0.0004 in on its own pin, tight for boost, and waits for the pin hone. */
export const tightBushing: DemoJob = {
  key: 'tight-bushing',
  customer: 'ascent',
  engine: 'hillClimbV6',
  serial: 'OV6-0417',
  duty: 'hard-boost',
  wanted: 'Forged short block for the hill-climb car. More boost than last year; the old engine picked up on one pin.',
  notes: 'Crew brings pistons, pins and rods themselves. Ring for the crew’s chief, not the driver.',
  promisedIn: 4,
  options: fullWork,
  intake: [
    item('V6 long block, on a stand', 1, 'Bore 4 scored, coolant drained'),
    item('Forged pistons with pins and flat rings', 6, 'New, boxed'),
    item('Forged rods', 6, 'New, boxed'),
    item('Turbocharger', 1, 'Shaft free, kept on the shelf', 'customer'),
  ],
  told: [
    'Your engine is stripped and crack tested. Nothing was found on block, crank and rods.',
    'Bores are finished. One rod bushing is a little tight for your boost and goes back on the pin hone.',
  ],
  async play(floor) {
    await floor.workThrough('resize-rods')
    await floor.workOn('hone-small-ends', { 'rod/3#small-end': clearanceOnMate('0.0004', 'PF1') })
  },
}

/** Mild boost: a bushing stands at its target, but was read with two gauges that cannot prove it. */
export const notProvenBushing: DemoJob = {
  key: 'not-proven-bushing',
  customer: 'maren',
  engine: 'hillClimbV6',
  serial: 'OV6-0388',
  duty: 'mild-boost',
  wanted: 'Rebuild with the boost turned down: reliable for a whole season.',
  notes: '',
  promisedIn: 23,
  options: { ...fullWork, alignHone: false },
  intake: [item('V6 short block', 1, 'Complete, turns'), item('Box of bolts and brackets', 1, 'Not sorted')],
  told: ['All sizes are taken and your plan is approved: machining has begun.'],
  async play(floor) {
    await floor.workThrough('resize-rods')
    await floor.workOn('hone-small-ends', { 'rod/5#small-end': clearanceBySizes('0.0007', 'B2') })
  },
}
