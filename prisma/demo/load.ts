import type { FastifyInstance } from 'fastify'
import type {} from '../../apps/api/src/shop.ts'
import { inTransaction } from '../../apps/api/src/database/transaction.ts'
import { createSetupLink, setUp } from '../../apps/api/src/people/set-up.ts'
import { readLinks } from '../../apps/api/src/status/links.ts'
import { Refused, signInAs, type Caller } from './client.ts'
import { addDays } from './days.ts'
import { engines } from './engines/index.ts'
import { openFloor } from './floor.ts'
import type { Hands } from './hands.ts'
import { idOf } from './identity.ts'
import type { DemoJob } from './jobs/job.ts'
import { jobs } from './jobs/index.ts'
import { openDemoJob, type OpenedJob } from './opening.ts'
import { people, shop, type DemoPerson, type PersonKey } from './people.ts'
import { personIdsOf, stockShop } from './stock.ts'

/** What is printed for whoever tries the demo. */
export interface DemoSummary {
  readonly shopName: string
  readonly people: readonly DemoPerson[]
  /** A customer’s status page, as a path from the root; null when its link was revoked. */
  readonly statusPath: string | null
}

export interface DemoOptions {
  /** The service, built as always; it need not listen. */
  readonly app: FastifyInstance
  /** The day in the shop's zone, `YYYY-MM-DD`, from which promises and calibrations are counted. */
  readonly today: string
  readonly onProgress?: (line: string) => void
}

/** Jobs worked on at once: while one waits for the database, the others compute. */
const LANES = 3

/** The job whose customer's page is shown. */
const shownJob = 'tight-bushing'

/**
 * Loads the demo shop into an empty service: the owner sets the shop up, then everybody signs in and does by the API what
 * a user would. Cut short, it goes on where it stopped when it is called again.
 * @throws Error when the service refuses a step: the demo is then wrong, not the user.
 */
export async function loadDemo({ app, today, onProgress = () => undefined }: DemoOptions): Promise<DemoSummary> {
  onProgress(`Setting up ${shop.name}`)
  const owner = await signInOwner(app)
  await stockShop(owner, today)
  const callers = await signInAll(app, owner)
  const personIds = await personIdsOf(owner)
  const spokenFor = new Map<PersonKey, number>()
  const opened: { job: DemoJob; is: OpenedJob }[] = []
  for (const job of jobs) opened.push({ job, is: await openDemoJob(callers.pim, job, addDays(today, job.promisedIn)) })
  await inLanes(LANES, opened, async ({ job, is }, index) => {
    onProgress(`Job ${index + 1} of ${jobs.length}: ${engines[job.engine].engine.name}`)
    await playJob(job, is, { callers, personIds, spokenFor })
  })
  return summary(app)
}

/** Does a few things at a time, the next in turn whenever one is done; a failure ends all lanes before it is thrown. */
async function inLanes<T>(lanes: number, things: readonly T[], work: (thing: T, index: number) => Promise<void>): Promise<void> {
  const turns = things.entries()
  const ends = await Promise.allSettled(Array.from({ length: lanes }, async () => {
    for (const [index, thing] of turns) await work(thing, index)
  }))
  const failure = ends.find((end) => end.status === 'rejected')
  if (failure !== undefined) throw failure.reason
}

/** What a later start prints, without loading anything. */
export function describeDemo({ app }: Pick<DemoOptions, 'app'>): Promise<DemoSummary> {
  return summary(app)
}

/** The owner signs in; in an empty service the shop is set up first, by the same use case as a real one. */
async function signInOwner(app: FastifyInstance): Promise<Caller> {
  try {
    return await signInAs(app, people.odile)
  } catch (error) {
    if (!(error instanceof Refused) || error.code !== 'sign-in-refused') throw error
  }
  const { pool, secrets, now } = app.shop
  const link = await createSetupLink(pool, now())
  if (link === null) throw new Error('This shop is set up already, and it is not the demo.')
  const { name: ownerName, signInName, password, pin } = people.odile
  const settings = {
    secret: link.secret, shopName: shop.name, timeZone: shop.timeZone, unit: shop.unit,
    ownerName, signInName, password, pin, isDemo: true,
  }
  await inTransaction(pool, (client) => setUp(client, settings, secrets.pinPepper, now()))
  return signInAs(app, people.odile)
}

async function signInAll(app: FastifyInstance, owner: Caller): Promise<Record<PersonKey, Caller>> {
  const [pim, bryn, halvard, sunniva] = await Promise.all(
    [people.pim, people.bryn, people.halvard, people.sunniva].map((person) => signInAs(app, person)),
  ) as [Caller, Caller, Caller, Caller]
  return { odile: owner, pim, bryn, halvard, sunniva }
}

async function playJob(
  job: DemoJob, { id, number }: OpenedJob, shared: Pick<Hands, 'callers' | 'personIds' | 'spokenFor'>,
): Promise<void> {
  const { sheets, unit } = engines[job.engine]
  const floor = openFloor({ jobId: id, jobKey: job.key, jobNumber: number, unit, ...shared })
  const isFirstPlan = (await floor.readPlan()).revision === 1
  if (isFirstPlan && job.sheetsMissing !== true) await floor.planWithSheets('Makers’ sheets entered', [...sheets, ...(job.sheets ?? [])])
  await job.play(floor)
}

/** Read from the database itself: it must be told at every start, also when the counter has chosen another password. */
async function summary(app: FastifyInstance): Promise<DemoSummary> {
  const { pool, secrets } = app.shop
  const links = await readLinks(pool, idOf('job', shownJob), secrets.statusLinkKey)
  const statusPath = links.find(({ revokedAt }) => revokedAt === null)?.path ?? null
  return { shopName: shop.name, people: Object.values(people), statusPath }
}
