import {
  dutyTitles, howMeasured, measuringStateTitles, placeTitle, sayStoodBy, sayValue, verdictTitles, type Limits, type Quantity,
  type ReaderUnit,
} from '@tenths/domain'
import type { BuildRecordPage } from '../build-record.ts'

type Line = BuildRecordPage['operations'][number]['lines'][number]
type RecordPass = BuildRecordPage['passes'][number]

/** An instant to the minute, in UTC and saying so: a record is read in other places too. */
export function instant(text: string): string {
  return `${text.slice(0, 10)} ${text.slice(11, 16)} UTC`
}

export function duty(record: BuildRecordPage): string {
  return dutyTitles[record.job.duty]
}

/** Low and high limit in the reader's unit. */
export function limits({ low, high }: Limits, quantity: Quantity, unit: ReaderUnit): string {
  const say = (value: number) => sayValue(value, quantity, unit)
  if (low !== null && high !== null) return `${say(low)} to ${say(high)}`
  if (low !== null) return `at least ${say(low)}`
  return high === null ? 'no limit' : `at most ${say(high)}`
}

/** What was measured: one value, or the least and the greatest, with its uncertainty. */
export function measured({ requirement, verdict }: Line, unit: ReaderUnit): string {
  const { least, greatest, uncertainty } = verdict
  if (least === null || greatest === null) return '–'
  const say = (value: number) => sayValue(value, requirement.quantity, unit)
  const value = least === greatest ? say(least) : `${say(least)} to ${say(greatest)}`
  return uncertainty === null ? value : `${value} (U ${say(Math.ceil(uncertainty))})`
}

export function verdict({ verdict: { kind }, concession }: Line): string {
  return concession === null
    ? verdictTitles[kind]
    : `${verdictTitles[kind]}; concession by ${concession.by}: ${concession.reason}`
}

/** Readings of a pass that count, point by point; a corrected one shows what it was. */
export function readings({ readings: taken, quantity }: RecordPass, unit: ReaderUnit): string {
  const superseded = new Map(taken.flatMap((reading) => {
    const before = taken.find(({ id }) => id === reading.supersedes)
    return before === undefined ? [] : [[reading.id, before] as const]
  }))
  const ended = new Set(taken.flatMap(({ supersedes }) => supersedes ?? []))
  const counting = taken.filter(({ id }) => !ended.has(id)).sort(
    (one, other) => (one.point < other.point ? -1 : 1),
  )
  return counting.map((reading) => {
    const before = superseded.get(reading.id)
    const correction = before === undefined
      ? ''
      : ` (corrected from ${sayValue(before.value, quantity, unit)}: ${reading.reason ?? ''})`
    return `${reading.point} ${figure(reading, quantity, unit)}${correction}${reading.confirmed ? ` (${sayStoodBy(reading)})` : ''}`
  }).join('; ')
}

/** Of feelers the interval between the blade that entered and the one that did not. */
function figure({ value, blades }: RecordPass['readings'][number], quantity: Quantity, unit: ReaderUnit): string {
  const entered = sayValue(value, quantity, unit)
  if (blades === undefined) return entered
  return blades.stops === null
    ? `${entered} or more, no thicker blade tried`
    : `${entered} entered, ${sayValue(blades.stops, quantity, unit)} did not`
}

/** Of what and how it was taken: feature, pass, state, setting, warmth, zero. */
export function taken(pass: RecordPass, unit: ReaderUnit): string {
  return [
    `${pass.feature}, pass ${pass.number}`,
    ...(pass.setOn === null ? [] : ['set on its mate']),
    ...pass.state.map((state) => measuringStateTitles[state].toLowerCase()),
    ...howMeasured(pass, unit),
  ].join('; ')
}

/** The lot that counts, and those that were typed before it with what was said of the change. */
export function lots({ lot, lots: typed }: BuildRecordPage['parts'][number]): string {
  const before = typed.slice(0, -1).map((one, index) => `${one.lot} until ${instant(typed[index + 1]?.at ?? '')}: ${typed[index + 1]?.reason ?? ''}`)
  return [lot || '–', ...before].join('; before, ')
}

export function place(name: string | null): string {
  return name === null ? 'not in the engine' : placeTitle(name)
}
