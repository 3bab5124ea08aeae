import type { applySuggestion as applySuggestionRoute } from '@tenths/contract'
import { markingSentence, sayValue, type ReaderUnit } from '@tenths/domain'
import { v7 as uuid } from 'uuid'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { loadMarks } from '../parts/load-marks.ts'
import { moveParts } from '../parts/place-parts.ts'
import { suggestionsOf, type KeyedSuggestion } from './weigh-job.ts'

/**
 * Puts all parts of a suggestion in their places at once. What was suggested is computed again under the job's lock: the
 * same key means the same readings, places and figures as the person saw.
 */
export async function applySuggestion(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<typeof applySuggestionRoute>,
): Promise<Answer<typeof applySuggestionRoute>> {
  const jobId = params.id
  announce({ kind: 'apply-suggestion', jobId })
  await lockJob(client, jobId)
  const evidence = await loadEvidence(client, jobId)
  const suggestion = suggestionsOf(evidence).find(({ key }) => key === body.suggestion)
  if (suggestion === undefined) {
    throw new ServiceError(
      'edit-stale',
      'Since this was suggested a reading or a part’s place has changed. Nothing was moved: look at what is suggested now.',
      'suggestion',
    )
  }
  const { reopened } = await moveParts(client, {
    jobId, personId: person.id, reason: reasonOf(suggestion, evidence.settings.unit),
    moves: suggestion.moves.map(({ partId, to }) => ({ id: uuid(), partId, place: to })),
  })
  const marks = await loadMarks(client, jobId)
  return {
    reopened,
    markings: suggestion.moves.map(({ partId, to }) => markingSentence(marks.get(partId) ?? '', to)),
  }
}

function reasonOf({ title, before, after }: KeyedSuggestion, unit: ReaderUnit): string {
  const [was, is] = [before, after].map(({ worstDistance }) => sayValue(worstDistance, 'length', unit))
  return `Trial fit, ${title.toLowerCase()}: the worst is ${is} from its target instead of ${was}.`
}
