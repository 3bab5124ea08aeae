import type { Operation } from '@tenths/domain'
import { ServiceError } from '../http/problem.ts'

/** One thing said at the bench. */
interface Said {
  readonly item: string
  readonly outcome: 'seen' | 'not-seen' | 'not-applicable'
  readonly note: string
  readonly since?: string | null
}

/** Clocks of device and service agree to some seconds: a time that is only just long enough ago there is so here. */
const slack = 30_000

/**
 * Refuses a tick of something that the step does not ask, or one without what the thing asks for: words, or a
 * time long enough ago.
 * @throws ServiceError `body-invalid` or `value-out-of-range` at `field`
 */
export function requireAnswer(operation: Operation, { item, outcome, note, since }: Said, now: Date, field: string): void {
  const thing = operation.observations.find(({ key }) => key === item)
  if (thing === undefined) {
    throw new ServiceError('body-invalid', `“${operation.title}” has no such thing to see.`, `${field}.item`)
  }
  const { asks, title } = thing
  if (asks === undefined || outcome === 'not-seen') return
  if (outcome === 'not-applicable') {
    if (note === '') throw new ServiceError('body-invalid', `Say why this does not apply: ${title}.`, `${field}.note`)
    return
  }
  if (asks.kind === 'words') {
    if (note === '') throw new ServiceError('body-invalid', `Write it down: ${asks.label}.`, `${field}.note`)
    return
  }
  if (since === undefined || since === null) {
    throw new ServiceError('body-invalid', `Say since when: ${title}.`, `${field}.since`)
  }
  const minutes = Math.floor((now.getTime() + slack - Date.parse(since)) / 60_000)
  if (minutes < asks.minutes) {
    throw new ServiceError(
      'value-out-of-range', `${Math.max(0, minutes)} of ${asks.minutes} minutes have passed: a reading counts once both are as warm as the room.`,
      `${field}.since`,
    )
  }
}
