import { z } from 'zod'

/** Wire types are plain JSON: no dates, no transforms, nothing that means another thing on the other side. */

export const Id = z.uuid()
/** A whole number in a quantity's base unit (nanometres for a length). */
export const BaseValue = z.int()
/** A local calendar day, `YYYY-MM-DD`. */
export const Day = z.iso.date()
/** An instant with its offset, as the server set it. */
export const Instant = z.iso.datetime({ offset: true })
/** Canonical words on one line. */
export const Line = (most: number) => z.string().trim().min(1).max(most)
export const Text = (most: number) => z.string().trim().max(most)
/** Thousandths of a °C. */
export const Temperature = z.int().min(-40_000).max(250_000)
/** Work without a network goes on behind a step that is marked as signed. */
export const Behind = z.boolean()
  .describe('It was done behind steps that are marked as signed and not confirmed yet: those count as passed here.')
/** A person’s PIN, on its way to be checked and nowhere kept. */
export const Pin = z.string().regex(/^\d{6}$/, 'Six digits.')
/** Milliseconds by which the server’s clock was ahead of a device’s at their last contact; null when they had none. */
export const DeviceOffset = z.int().min(-2_000_000_000).max(2_000_000_000).nullable()
