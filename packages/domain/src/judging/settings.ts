import type { ReaderUnit } from '../exact/length-unit.ts'

/** What the shop sets for all verdicts. */
export interface JudgeSettings {
  /**
   * k with which an uncertainty is stated where a requirement names none: simple acceptance keeps no guard
   * band.
   */
  readonly coverageFactor: number
  /** The unit in which remedies and advice are worded. */
  readonly unit: ReaderUnit
}

export const defaultJudgeSettings: JudgeSettings = { coverageFactor: 2, unit: 'inch' }
