import { readableStep, type GaugeResolution } from '../exact/resolution.ts'

/** What a comparator showed when it was put back on what it was set on, against what it may show, in nanometres. */
export interface ZeroCheck {
  readonly deviation: number
  readonly allowed: number
}

/**
 * How far a zero may have moved: the shop's number (0.0001 in to start with; common practice, no source), or one readable
 * step of a gauge that cannot show as little.
 */
export function allowedDrift(gauge: GaugeResolution, drift: number): number {
  return Math.max(drift, Math.ceil(readableStep(gauge)))
}

/** Whether the zero had drifted, so that nothing read since the last good one counts. */
export function hasDrifted({ deviation, allowed }: ZeroCheck): boolean {
  return Math.abs(deviation) > allowed
}
