import { signInAs, type Caller } from '../../../prisma/demo/client.ts'
import { addDays } from '../../../prisma/demo/days.ts'
import { engines } from '../../../prisma/demo/engines/index.ts'
import { openFloor, type Floor } from '../../../prisma/demo/floor.ts'
import { freshenUp, item, type DemoJob } from '../../../prisma/demo/jobs/job.ts'
import { openDemoJob, type OpenedJob } from '../../../prisma/demo/opening.ts'
import { people, type PersonKey } from '../../../prisma/demo/people.ts'
import { personIdsOf, stockShop } from '../../../prisma/demo/stock.ts'
import { serviceAt } from './over-the-wire.ts'

/** A job without boost: common practice, no source, gives its pin bushings 0.0003 to 0.0008 in. */
const unboosted: DemoJob = {
  key: 'keyboard', customer: 'ferryman', engine: 'workBoatV8', serial: '', duty: 'street', wanted: '', notes: '', promisedIn: 30,
  options: freshenUp, intake: [item('V8 short block')], told: [], play: async () => undefined,
}

/** As `openUnboosted`, and everybody else does by the API what leads up to the small ends. */
export async function workUpToSmallEnds(address: string, today: string): Promise<{ job: OpenedJob; floor: Floor }> {
  const opened = await openUnboosted(address, today)
  await opened.floor.workThrough('resize-rods')
  return opened
}

/**
 * Stocks a shop whose owner is there as the demo is stocked, opens the job and plans it with its makers' sheets.
 * @param today day of the shop, `YYYY-MM-DD`
 */
export async function openUnboosted(address: string, today: string): Promise<{ job: OpenedJob; floor: Floor }> {
  const service = serviceAt(address)
  const desk = await signInAs(service, people.odile)
  await stockShop(desk, today)
  const others = Object.entries(people).map(async ([key, person]) => [key, await signInAs(service, person)] as const)
  const callers = Object.fromEntries(await Promise.all(others)) as Record<PersonKey, Caller>
  const job = await openDemoJob(callers.pim, unboosted, addDays(today, unboosted.promisedIn))
  const { sheets, unit } = engines[unboosted.engine]
  const personIds = await personIdsOf(desk)
  const floor = openFloor({ jobId: job.id, jobKey: unboosted.key, jobNumber: job.number, unit, callers, personIds, spokenFor: new Map() })
  await floor.planWithSheets('Makers’ sheets entered', [...sheets])
  return { job, floor }
}
