import type { readTrialFit as readTrialFitRoute } from '@tenths/contract'
import { markingSentence, type Plan } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import type { Answer } from '../http/register.ts'
import type { Evidence } from '../judging/evidence.ts'
import { findJob } from '../judging/find-job.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { standingsOf } from '../judging/standing.ts'
import { loadMarks } from '../parts/load-marks.ts'
import { placedAfter, relyingOnMove } from '../parts/relying-on-move.ts'
import { forecastOf, suggestionsOf, type KeyedSuggestion } from './weigh-job.ts'

type Page = Answer<typeof readTrialFitRoute>

/** *Will it go together?*, and what would fit better elsewhere. A job that is handed over is only looked at. */
export async function readTrialFit(database: Queryable, number: number): Promise<Page> {
  const { id, engineName, duty, state } = await findJob(database, { number })
  const evidence = await loadEvidence(database, id)
  const { plan, planRevision } = evidence
  const { lines, counts } = forecastOf(evidence)
  const requirements = new Map(plan.requirements.map((requirement) => [requirement.key, requirement]))
  const judgedAt = stepsByRequirement(plan)
  const page = {
    job: { id, number, engineName, duty, state, planRevision },
    lines: lines.map(({ requirement, standing, basis, verdict, assumed, cutAt }) => ({
      requirement: requirements.get(requirement), standing, basis, verdict, assumed, cutAt,
      judgedAt: judgedAt.get(requirement) ?? null,
    })),
    counts,
    suggestions: state === 'open' ? await inFull(database, evidence, suggestionsOf(evidence)) : [],
  }
  // Domain and contract describe the same shapes (a type test holds them equal); the domain's are readonly.
  return page as unknown as Page
}

/** The step that judges each requirement, the last where several do. */
function stepsByRequirement({ operations }: Plan): Map<string, { key: string; title: string }> {
  return new Map(operations.flatMap(({ key, title, requirements }) =>
    requirements.map((requirement) => [requirement, { key, title }] as const)))
}

/** With the marks of the parts, and the steps that would open again. */
async function inFull(
  database: Queryable, evidence: Evidence, suggestions: readonly KeyedSuggestion[],
): Promise<object[]> {
  if (suggestions.length === 0) return []
  const { jobId, placed } = evidence
  const marks = await loadMarks(database, jobId)
  const inFull: object[] = []
  for (const { key, title, moves, fits, before, after, measureAgain } of suggestions) {
    const moved = placedAfter(placed, moves)
    const standings = standingsOf({ ...evidence, placed: moved })
    const relying = await relyingOnMove(database, { jobId, before: placed, after: moved, standings })
    inFull.push({
      key, title, fits, before, after, measureAgain,
      moves: moves.map((move) => {
        const mark = marks.get(move.partId) ?? ''
        return { ...move, mark, marking: markingSentence(mark, move.to) }
      }),
      reopens: relying.map((signOff) => ({ key: signOff.operationKey, title: signOff.title })),
    })
  }
  return inFull
}
