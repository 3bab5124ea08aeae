import { handOver, placeParts } from '@tenths/contract'
import { longRodParts } from '../engines/street-v8.ts'
import { idOf } from '../identity.ts'
import { offAt, offBy } from '../surprises.ts'
import { freshenUp, fullWork, item, type DemoJob } from './job.ts'

/** Finished, sealed and collected: the full build record. */
export const collected: DemoJob = {
  key: 'collected',
  customer: 'tilda',
  engine: 'streetV8',
  serial: 'FV8-0093',
  duty: 'street',
  wanted: 'Rebore and new pistons for the estate car, nothing fancy, quiet and dry.',
  notes: 'Paid in full.',
  promisedIn: 1,
  options: fullWork,
  intake: [item('V8 engine, complete', 1, 'Smokes, knocks when cold'), item('Engine mounts', 2, 'Perished')],
  told: ['Your engine is finished and waits for you.', 'Thank you. The first-start sheet is in the envelope: read it before you turn the key.'],
  async play(floor) {
    await floor.workThrough('hand-over')
    await floor.as('pim').call(handOver, { params: { id: floor.jobId } })
  },
}

/** A bore that was measured tight was honed once more: its second pass is within. Two pistons changed places before. */
export const reHoned: DemoJob = {
  key: 're-honed',
  customer: 'otis',
  engine: 'streetV8',
  serial: 'FV8-0131',
  duty: 'towing',
  wanted: 'Pulls a horse trailer. Low-down pull, cool running.',
  notes: '',
  promisedIn: 12,
  options: { ...fullWork, alignHone: false },
  intake: [item('V8 short block', 1, 'Ridge worn in all bores'), item('Cast pistons with pins', 8, 'New, one set')],
  told: ['Bores are honed to your pistons, the crank is ground. Rods come next.'],
  async play(floor) {
    await floor.workThrough('bore')
    const { placed } = await floor.readStep('hone-bores')
    const part = (marked: string) => placed.find(({ mark }) => mark === marked)?.partId ?? ''
    await floor.as('halvard').call(placeParts, {
      params: { id: floor.jobId },
      body: {
        reason: 'Piston 2 is the largest of the set and goes where the bore is largest',
        moves: [
          { id: idOf('move', floor.jobId, 1), partId: part('P2'), place: 'piston/7' },
          { id: idOf('move', floor.jobId, 2), partId: part('P7'), place: 'piston/2' },
        ],
      },
    })
    // Whoever signed for the pistons signs again: two of them sit elsewhere now.
    await floor.sign('receive-parts')
    await floor.workOn('hone-bores', { 'block#bore-5': offBy('-0.0008') })
    await floor.measureAgain('hone-bores', 'block#bore-5')
    await floor.sign('hone-bores')
    await floor.workThrough('grind-crank')
  },
}

/** Long rods push the pin up into the oil groove: the route has a step for support rails. */
export const supportRails: DemoJob = {
  key: 'support-rails',
  customer: 'jessamy',
  engine: 'streetV8',
  serial: 'FV8-0207',
  duty: 'street',
  wanted: 'Long rods and forged pistons, revs a little higher than stock.',
  notes: 'Customer chose rods and pistons; told about the support rails when the job was opened.',
  promisedIn: 17,
  parts: longRodParts,
  options: freshenUp,
  intake: [item('V8 block and crank', 1, 'Clean, bored by another shop'), item('Long rods, forged pistons, rings', 1, 'New set')],
  told: ['Your pistons need support rails under the oil rings; they are in. Rings come next.'],
  async play(floor) {
    await floor.decideOnPlan('Oil groove', 'rework', 'Support rails of this width are ordered; the route has a step for them.')
    await floor.workThrough('measure-block')
    await floor.workOn('measure-crank', { 'crankshaft#rod-journal-2': offAt(['front/vertical'], '0.0100') })
    await floor.correct('measure-crank', 'crankshaft#rod-journal-2', 'front/vertical', '-0.0100', 'Misread the thimble')
    await floor.sign('measure-crank')
    await floor.workThrough('support-rails')
  },
}

/** Measured, planned, and waiting for the customer's word. */
export const awaitingApproval: DemoJob = {
  key: 'awaiting-approval',
  customer: 'corin',
  engine: 'streetV8',
  serial: 'FV8-0044',
  duty: 'restoration',
  wanted: 'Stock restoration, matching numbers: keep every original part that can be kept.',
  notes: 'Wants photographs of everything.',
  promisedIn: 45,
  options: { ...freshenUp, newRodBolts: false, balance: false },
  intake: [item('V8 engine, original', 1, 'Complete, never apart'), item('Tin box of spare bolts', 1)],
  told: ['Everything is measured. The plan and its price are in your post: we go on when you say so.'],
  async play(floor) {
    await floor.workThrough('receive-parts')
  },
}
