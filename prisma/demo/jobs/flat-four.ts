import { flatFour, pistonSheet } from '../engines/flat-four.ts'
import { freshenUp, item, type DemoJob } from './job.ts'

/** Air-cooled with its maker's sheet: the sheet came after the first plan, and the owner planned again. */
export const winch: DemoJob = {
  key: 'winch',
  customer: 'larkfield',
  engine: 'flatFour',
  serial: 'L4-0058',
  duty: 'sustained',
  wanted: 'Winch engine, four launches an hour all summer. Measure everything, replace what is tired.',
  notes: 'A ground winch, not an aircraft: said so twice on the telephone.',
  promisedIn: 15,
  options: freshenUp,
  intake: [item('Flat four, air-cooled, with fan', 1, 'Oil leaks at the pushrod tubes'), item('Cylinders', 4, 'Light rust in two')],
  told: ['The piston maker sent the sheet for your cylinders; honing has begun.'],
  async play(floor) {
    await floor.workThrough('receive-parts')
    await floor.planWithSheets('Piston maker’s sheet for air-cooled cylinders arrived', [...flatFour.sheets, pistonSheet])
    await floor.workThrough('fit-pins')
  },
}

/** The same engine without the sheet: no rule of the shop may stand in for it, so the owner has a finding to decide. */
export const sheetWanted: DemoJob = {
  key: 'sheet-wanted',
  customer: 'imogen',
  engine: 'flatFour',
  serial: 'L4-0112',
  duty: 'street',
  wanted: 'Engine of a beach buggy. Rings and bearings, perhaps cylinders.',
  notes: 'No papers with it at all.',
  promisedIn: 30,
  options: freshenUp,
  intake: [item('Flat four, air-cooled', 1, 'Sand in the fins'), item('Carburettors', 2, 'Gummed')],
  told: ['We need the piston maker’s sheet for your cylinders and have asked for it.'],
  async play(floor) {
    await floor.workThrough('receive-parts')
  },
}
