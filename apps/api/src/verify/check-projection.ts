import type { Queryable } from '../database/queryable.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { differences, loadProjection, projectionOf } from '../judging/project-operations.ts'
import { standingsOf } from '../judging/standing.ts'
import type { Blame } from './fault.ts'

/** Judges everything again and holds what lists show of each step against it. */
export async function checkProjection(database: Queryable, jobId: string, blame: Blame): Promise<void> {
  const kept = await loadProjection(database, jobId)
  const standings = standingsOf(await loadEvidence(database, jobId))
  for (const standing of standings) {
    const { key, title } = standing.operation
    const fresh = projectionOf(standing)
    const row = kept.get(key)
    if (row === undefined) {
      blame(title, 'it is missing from the lists')
      continue
    }
    for (const field of differences(fresh, row)) {
      blame(title, `${field.replaceAll('_', ' ')} is kept as ${row[field]}, and comes out as ${fresh[field]}`)
    }
  }
  const known = new Set(standings.map(({ operation }) => operation.key))
  for (const key of kept.keys()) if (!known.has(key)) blame(key, 'it is in the lists and not in the plan')
}
