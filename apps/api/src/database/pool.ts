import pg from 'pg'
import { PreparingClient } from './preparing-client.ts'
import { wholeNumber } from './whole-number.ts'

/** Longest wait for a connection, a lock or a statement, in milliseconds. */
const LONGEST_WAIT = 10_000

// Object identifiers of built-in types: `SELECT oid, typname FROM pg_type`.
const INT8 = 20
const INT8_ARRAY = 1016
const DATE = 1082
const DATE_ARRAY = 1182
const TEXT_ARRAY = 1009

/** pg declares its parsers for single types only. */
const texts = (pg.types.getTypeParser as (oid: number) => unknown)(TEXT_ARRAY) as (text: string) => (string | null)[]

/** How values come back: int8 as an exact number or not at all, a calendar day as its own text. */
const types: pg.CustomTypesConfig = {
  getTypeParser: ((oid: number, format?: 'text' | 'binary') => {
    if (format === 'binary') return pg.types.getTypeParser(oid, format)
    if (oid === INT8) return wholeNumber
    if (oid === INT8_ARRAY) return (text: string) => texts(text).map((each) => (each === null ? null : wholeNumber(each)))
    if (oid === DATE) return (text: string) => text
    if (oid === DATE_ARRAY) return texts
    return pg.types.getTypeParser(oid, 'text')
  }) as pg.CustomTypesConfig['getTypeParser'],
}

export type PoolOptions = {
  /** Most connections held at once. */
  readonly connections?: number
  /** Shown in `pg_stat_activity`. */
  readonly name?: string
  /** Told when an idle connection breaks; the pool replaces it by itself. */
  readonly onIdleError?: (error: Error) => void
}

/**
 * Connections to one database. No wait is longer than {@link LONGEST_WAIT}: for a connection, a lock, a statement,
 * or a transaction that does nothing.
 */
export function createPool(connectionString: string, options: PoolOptions = {}): pg.Pool {
  const pool = new pg.Pool({
    connectionString,
    max: options.connections ?? 20,
    application_name: options.name ?? 'tenths',
    connectionTimeoutMillis: LONGEST_WAIT,
    statement_timeout: LONGEST_WAIT,
    lock_timeout: LONGEST_WAIT,
    idle_in_transaction_session_timeout: LONGEST_WAIT,
    types,
    Client: PreparingClient,
  })
  // Without a listener a broken idle connection would end the process.
  pool.on('error', (error) => options.onIdleError?.(error))
  return pool
}
