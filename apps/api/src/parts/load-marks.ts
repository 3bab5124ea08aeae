import type { Queryable } from '../database/queryable.ts'

/** What is marked on each part of a job, by the part's id. */
export async function loadMarks(database: Queryable, jobId: string): Promise<Map<string, string>> {
  const { rows } = await database.query<{ id: string; mark: string }>('SELECT id, mark FROM part WHERE job_id = $1', [jobId])
  return new Map(rows.map(({ id, mark }) => [id, mark]))
}
