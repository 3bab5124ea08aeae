import type { Pass } from '../sheet/operation-sheet.ts'

/** What is told once for a sitting at a step: settings by table and gauge, and how warm part and room are. */
export interface Sitting {
  readonly settings: Readonly<Record<string, Pass['setting']>>
  readonly temperatures: Pass['temperatures']
}

/** A sitting ends after this long: by then gauge and part are as warm as they like. One shift, in milliseconds. */
const lasts = 12 * 60 * 60 * 1_000

const entry = (jobId: string, operationKey: string) => `sitting/${jobId}/${operationKey}`

/** What was told of this step on this device within the shift: a reload loses nothing. */
export function rememberedSitting(jobId: string, operationKey: string, now: number): Sitting {
  const kept = localStorage.getItem(entry(jobId, operationKey))
  if (kept === null) return { settings: {}, temperatures: null }
  const { at, sitting } = JSON.parse(kept) as { at: number; sitting: Sitting }
  return now - at < lasts ? sitting : { settings: {}, temperatures: null }
}

export function rememberSitting(jobId: string, operationKey: string, sitting: Sitting, now: number): void {
  localStorage.setItem(entry(jobId, operationKey), JSON.stringify({ at: now, sitting }))
}
