import type { FeatureDefinition, Requirement, Verdict } from '@tenths/domain'
import { verdictTitles } from '@tenths/domain'
import type { OperationSheet } from '../sheet/operation-sheet.ts'
import { isGood } from '../verdicts/concession.ts'

interface Signed extends Pick<OperationSheet, 'waitsFor' | 'operation' | 'observations' | 'inspections' | 'lots' | 'findings' | 'concessions' | 'job'> {
  readonly requirements: readonly Requirement[]
}

/** What this page knows beside the service's answer. */
export interface Here {
  readonly verdicts: readonly Verdict[]
  /** Features without a full pass of this step, whether or not a limit rests on them. */
  readonly unmeasured: readonly FeatureDefinition[]
  /** Values that have not reached the service, and values that it refused. */
  readonly waiting: number
  readonly refused: number
  /** Without the network a step is only marked as signed: what waits is confirmed in its order later. */
  readonly isAway: boolean
}

/** What is still to be done before a step can be signed, in plain sentences; empty when nothing stands in the way. */
export function inTheWay(sheet: Signed, { verdicts, unmeasured, waiting, refused, isAway }: Here): readonly string[] {
  return [
    ...(sheet.job.state === 'handed-over' ? ['The job is handed over: only the owner can open it again.'] : []),
    ...sheet.waitsFor.filter(({ marked }) => !(isAway && marked)).map(({ title }) => `“${title}” comes before this and is not signed yet.`),
    ...unfilled(unmeasured),
    ...notMeasured(sheet, verdicts, unmeasured.length > 0),
    ...ungood(sheet, verdicts),
    ...unseen(sheet),
    ...untested(sheet),
    ...lotless(sheet),
    ...undecided(sheet),
    ...(waiting > 0 && !isAway ? [`${count(waiting, 'entry has', 'entries have')} not reached the server yet.`] : []),
    ...(refused > 0 ? [`${count(refused, 'entry was', 'entries were')} refused: put each right, or away.`] : []),
  ]
}

/** As many as a person reads at a glance; the grid shows them all. */
const named = 3

function unfilled(features: readonly FeatureDefinition[]): readonly string[] {
  if (features.length === 0) return []
  const titles = features.slice(0, named).map(({ title }) => title).join(', ')
  const more = features.length > named ? ` and ${features.length - named} more` : ''
  return [`Not fully measured at this step: ${titles}${more}.`]
}

/** Whatever else a requirement lacks: a mate measured at an earlier step, a state, a part in its place. */
function notMeasured(
  { requirements }: Signed, verdicts: readonly Verdict[], isUnfilled: boolean,
): readonly string[] {
  if (isUnfilled) return []
  const titles = new Map(requirements.map(({ key, title }) => [key, title]))
  return verdicts
    .filter(({ kind }) => kind === 'not-measured')
    .slice(0, named)
    .map(({ requirement, advice }) => `${titles.get(requirement) ?? requirement} cannot be judged yet. ${advice ?? ''}`.trim())
}

function ungood({ requirements, concessions }: Signed, verdicts: readonly Verdict[]): readonly string[] {
  const titles = new Map(requirements.map(({ key, title }) => [key, title]))
  const bad = verdicts.filter((verdict) => verdict.kind !== 'not-measured' && !isGood(verdict, concessions))
  const first = bad.slice(0, named).map(({ requirement, kind }) =>
    `${titles.get(requirement) ?? requirement} is ${verdictTitles[kind].toLowerCase()}: measure again, or ask the owner.`)
  const more = bad.length - named
  return more > 0 ? [...first, `${count(more, 'more is', 'more are')} outside or not proven.`] : first
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

function untested({ operation, inspections }: Signed): readonly string[] {
  const results = new Map(inspections.filter(({ counts }) => counts).map((one) => [one.item, one]))
  const areas = operation.inspections ?? []
  const open = areas.filter(({ key }) => !results.has(key)).length
  const unsound = areas.filter(({ key }) => {
    const result = results.get(key)
    return result !== undefined && result.result !== 'no-indication' && !result.conceded
  })
  return [
    ...(open === 0 ? [] : [`${count(open, 'area is', 'areas are')} still to be tested.`]),
    ...unsound.map(({ title }) => `${title} is not sound: only the owner can let it pass.`),
  ]
}

function lotless({ lots }: Signed): readonly string[] {
  const open = lots.filter(({ lot }) => lot === '').length
  return open === 0 ? [] : [`${count(open, 'part has', 'parts have')} no lot or serial yet.`]
}

function undecided({ findings }: Signed): readonly string[] {
  return findings
    .filter(({ state, stops }) => state === 'open' && stops)
    .map(({ title }) => `The owner has not decided yet: ${title}.`)
}

function count(number: number, one: string, many: string): string {
  return `${number} ${number === 1 ? one : many}`
}
