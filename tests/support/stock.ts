import { randomUUID } from 'node:crypto'
import type { Role } from '@tenths/contract'
import { benchKinds, type EngineSpecification, type PartsSpecification } from '@tenths/domain'
import type pg from 'pg'
import { insertPerson } from '../../apps/api/src/people/insert-person.ts'
import { flatFour, inlineFour, metricParts, single, v6, v8, v8Parts } from '../../packages/domain/src/testing/engines.ts'

export const testSecrets = { pinPepper: '5a'.repeat(32), statusLinkKey: 'c3'.repeat(32) }

/** A person of the test shop, with what they would type. */
export interface TestPerson {
  readonly id: string
  readonly name: string
  readonly signInName: string
  readonly password: string
  readonly pin: string
  readonly roles: readonly Role[]
}

export type Who = Role | 'second'

/** One person of each role, and a second machinist for operations that two people sign. */
export const testPeople: Readonly<Record<Who, TestPerson>> = {
  counter: person('counter', 'Ada Counter', ['counter'], '310742'),
  machinist: person('machinist', 'Ben Machinist', ['machinist'], '482913'),
  second: person('second', 'Cleo Machinist', ['machinist'], '659027'),
  owner: person('owner', 'Dora Owner', ['owner'], '175368'),
}

function person(signInName: string, name: string, roles: readonly Role[], pin: string): TestPerson {
  return { id: randomUUID(), name, signInName, password: `${signInName} of the test shop`, pin, roles }
}

/** Invented gauges; u is half of the U = 2u that stands on their certificates. */
const gauges = [
  { mark: 'M1', name: 'Micrometer', kind: 'micrometer', resolution: 2_540, analogue: false, u: 1_270 },
  { mark: 'B1', name: 'Bore gauge', kind: 'bore-gauge', resolution: 2_540, analogue: true, u: 1_270 },
  { mark: 'P1', name: 'Pin-fit gauge', kind: 'pin-fit-gauge', resolution: 1_270, analogue: true, u: 635 },
  { mark: 'F1', name: 'Feeler gauges', kind: 'feeler', resolution: 25_400, analogue: false, u: 6_350 },
  { mark: 'D1', name: 'Depth gauge', kind: 'depth-gauge', resolution: 2_540, analogue: true, u: 2_540 },
] as const

export type GaugeMark = (typeof gauges)[number]['mark']

const models: readonly (readonly [EngineSpecification, PartsSpecification])[] = [
  [v8, v8Parts], [v6, v8Parts], [inlineFour, metricParts], [flatFour, metricParts], [single, metricParts],
]

export interface Stock {
  /** Id of one bench of each kind, by kind. */
  readonly benches: Readonly<Record<string, string>>
  /** Ids of gauges by mark. */
  readonly gauges: Readonly<Record<GaugeMark, string>>
  /** Ids of engine models by name, such as `Test V8`. */
  readonly models: Readonly<Record<string, string>>
}

/** Fills an empty database: a shop, its people, benches, gauges and engines, and not one job. */
export async function stock(pool: pg.Pool, timeZone: string): Promise<Stock> {
  await pool.query(`INSERT INTO shop (name, time_zone, unit) VALUES ('Test shop', $1, 'inch')`, [timeZone])
  const client = await pool.connect()
  try {
    for (const each of Object.values(testPeople)) await insertPerson(client, each, testSecrets.pinPepper)
  } finally {
    client.release()
  }
  return { benches: await addBenches(pool), gauges: await addGauges(pool), models: await addModels(pool) }
}

async function addBenches(pool: pg.Pool): Promise<Stock['benches']> {
  const benches = Object.fromEntries(benchKinds.map((kind) => [kind, randomUUID()]))
  for (const [kind, id] of Object.entries(benches)) {
    await pool.query('INSERT INTO bench (id, name, kind) VALUES ($1, $2, $3)', [id, `Bench: ${kind}`, kind])
  }
  return benches
}

async function addGauges(pool: pg.Pool): Promise<Stock['gauges']> {
  const ids = Object.fromEntries(gauges.map(({ mark }) => [mark, randomUUID()])) as Record<GaugeMark, string>
  for (const { mark, name, kind, resolution, analogue, u } of gauges) {
    await pool.query(
      `INSERT INTO gauge (id, mark, name, kind, quantity, resolution, analogue, standard_uncertainty, calibrated_until)
       VALUES ($1, $2, $3, $4, 'length', $5, $6, $7, '2099-12-31')`,
      [ids[mark], mark, name, kind, resolution, analogue, u],
    )
  }
  return ids
}

async function addModels(pool: pg.Pool): Promise<Stock['models']> {
  const ids = Object.fromEntries(models.map(([engine]) => [engine.name, randomUUID()]))
  for (const [engine, parts] of models) {
    await pool.query('INSERT INTO engine_model (id, name, specification, parts) VALUES ($1, $2, $3, $4)', [
      ids[engine.name], engine.name, JSON.stringify(engine), JSON.stringify(parts),
    ])
  }
  return ids
}
