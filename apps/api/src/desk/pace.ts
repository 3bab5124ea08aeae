import type { readDesk } from '@tenths/contract'
import type { z } from 'zod'
import { minutesWorked } from '../bench/work-time.ts'
import type { Queryable } from '../database/queryable.ts'

type Pace = z.input<(typeof readDesk)['answer']>['pace'][number]

/** Jobs that must have been timed before the hours taken say more than the standard: our choice, no source. */
const JOBS_TO_COUNT = 3

/**
 * Signed and timed operations by their key, for a WITH clause: how often, with which standard minutes, and how many were
 * taken. Less than a minute in all is a step that nobody timed, such as one typed in afterwards.
 */
const timed = `
  timed AS (
    SELECT operation_state.operation_key, operation_state.job_id, max(operation_state.title) AS title,
           max(operation_state.minutes) AS standard, sum(${minutesWorked}) AS taken
      FROM work_time
      JOIN operation_state
        ON operation_state.job_id = work_time.job_id AND operation_state.operation_key = work_time.operation_key
     WHERE operation_state.state = 'signed' AND operation_state.minutes > 0
     GROUP BY operation_state.operation_key, operation_state.job_id
    HAVING sum(${minutesWorked}) >= 1
  ), pace AS (
    SELECT operation_key, count(*)::integer AS jobs, max(title) AS title, sum(standard) AS standard, sum(taken) AS taken
      FROM timed GROUP BY operation_key
  )`

/** For a WITH clause: `expected (operation_key, factor)`, what a standard minute took here, where enough was timed. */
export const expected = `${timed}, expected AS (
    SELECT operation_key, taken / standard AS factor FROM pace WHERE jobs >= ${JOBS_TO_COUNT}
  )`

/** Minutes to expect of a row of `operation_state`, joined with `expected`. */
export const expectedMinutes = (row: string): string => `${row}.minutes * coalesce(expected.factor, 1)`

/** What each kind of operation took on average against its standard, the farthest off first; one statement. */
export async function loadPace(database: Queryable): Promise<Pace[]> {
  const { rows } = await database.query<Pace>(
    `WITH ${timed}
     SELECT operation_key AS key, title, jobs, round(standard / jobs)::integer AS "standardMinutes",
            round(taken / jobs)::integer AS "takenMinutes", jobs >= ${JOBS_TO_COUNT} AS "isUsed"
       FROM pace
      ORDER BY abs(taken - standard) / jobs DESC, title
      LIMIT 40`,
  )
  return rows
}
