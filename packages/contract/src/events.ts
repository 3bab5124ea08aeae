import { z } from 'zod'
import { everyone } from './route.ts'

/**
 * The stream of changes, as server-sent events: it stands beside the JSON routes and is declared here for both sides.
 * A browser that knows the last id it saw sends it as `Last-Event-ID`, or as `?after=` when it cannot set headers.
 */
export const eventStream = {
  method: 'GET',
  path: '/api/events',
  summary: 'Server-sent events: what changed, so that pages look again',
  who: everyone,
} as const

/**
 * Names of the stream's events: `ready` once all that was missed is sent; `change` for each command; `resync` when what
 * was missed cannot be told, so that everything must be read again.
 */
export const streamEventNames = ['ready', 'change', 'resync'] as const

/** Data of a `change`: it says where to look again and nothing of what is there. */
export const Change = z.object({
  /** Name of the command in lower case with hyphens, such as `take-readings`. */
  kind: z.string(),
  jobId: z.string().nullable(),
  operationKey: z.string().nullable(),
})
export type Change = z.infer<typeof Change>
