import type { Pool } from 'pg'

/** Longer than any tablet stays off the network. */
const ANSWER_DAYS = 90

/** Forgets answers whose keys nobody will send again. */
export async function forgetOldAnswers(pool: Pool, now: Date): Promise<void> {
  await pool.query(`DELETE FROM command_answer WHERE answered_at < $1::timestamptz - make_interval(days => $2)`, [
    now, ANSWER_DAYS,
  ])
}
