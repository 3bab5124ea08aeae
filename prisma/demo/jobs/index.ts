import { sheetWanted, winch } from './flat-four.ts'
import { notProvenBushing, tightBushing } from './hill-climb.ts'
import { deliveryVan, unmeasuredBox } from './inline-four.ts'
import type { DemoJob } from './job.ts'
import { justIn, pumpEngine } from './single.ts'
import { borrowedBlock, headsOnly, jettyEngine, mixedPistons, spunCrank } from './other-work.ts'
import { awaitingApproval, collected, reHoned, supportRails } from './street-v8.ts'
import { concededBore, foulingShells, lateBoat } from './work-boat.ts'

/** All jobs, in the order in which they were opened. */
export const jobs: readonly DemoJob[] = [
  collected, pumpEngine, lateBoat, concededBore, deliveryVan, tightBushing, reHoned, winch, supportRails,
  notProvenBushing, sheetWanted, foulingShells, awaitingApproval, unmeasuredBox, justIn,
  jettyEngine, headsOnly, spunCrank, borrowedBlock, mixedPistons,
]
