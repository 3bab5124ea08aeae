import type { Verdict } from '@tenths/domain'
import { verdictTitles } from '@tenths/domain'
import type { OperationSheet } from '../sheet/operation-sheet.ts'
import { isGood } from '../verdicts/concession.ts'

type Signed = Pick<
  OperationSheet, 'waitsFor' | 'operation' | 'requirements' | 'observations' | 'findings' | 'concessions' | 'job'
>

/** What is still to be done before a step can be signed, in plain sentences; empty when nothing stands in the way. */
export function inTheWay(sheet: Signed, verdicts: readonly Verdict[], unsent: number): readonly string[] {
  return [
    ...(sheet.job.state === 'handed-over' ? ['The job is handed over: only the owner can open it again.'] : []),
    ...sheet.waitsFor.map(({ title }) => `“${title}” comes before this and is not signed yet.`),
    ...unmeasured(verdicts),
    ...ungood(sheet, verdicts),
    ...unseen(sheet),
    ...undecided(sheet),
    ...(unsent > 0 ? [`${count(unsent, 'value has', 'values have')} not reached the server yet.`] : []),
  ]
}

function unmeasured(verdicts: readonly Verdict[]): readonly string[] {
  const missing = verdicts.filter(({ kind }) => kind === 'not-measured').length
  return missing === 0 ? [] : [`${count(missing, 'requirement is', 'requirements are')} not fully measured.`]
}

function ungood({ requirements, concessions }: Signed, verdicts: readonly Verdict[]): readonly string[] {
  const titles = new Map(requirements.map(({ key, title }) => [key, title]))
  return verdicts
    .filter((verdict) => verdict.kind !== 'not-measured' && !isGood(verdict, concessions))
    .map(({ requirement, kind }) =>
      `${titles.get(requirement) ?? requirement} is ${verdictTitles[kind].toLowerCase()}: measure again, or ask the owner.`)
}

function unseen({ operation, observations }: Signed): readonly string[] {
  const outcomes = new Map(observations.map(({ item, outcome }) => [item, outcome]))
  const open = operation.observations.filter(({ key }) => !outcomes.has(key)).length
  const notSeen = operation.observations.filter(({ key }) => outcomes.get(key) === 'not-seen')
  return [
    ...(open === 0 ? [] : [`${count(open, 'thing is', 'things are')} still to be looked at.`]),
    ...notSeen.map(({ title }) => `“${title}” was not seen.`),
  ]
}

function undecided({ findings }: Signed): readonly string[] {
  return findings
    .filter(({ state, stops }) => state === 'open' && stops)
    .map(({ title }) => `The owner has not decided yet: ${title}.`)
}

function count(number: number, one: string, many: string): string {
  return `${number} ${number === 1 ? one : many}`
}
