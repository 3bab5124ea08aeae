import type { FeaturePass, JudgeSettings, PlacedPart, Plan } from '@tenths/domain'

/** The latest tick of one thing to be seen. */
export interface LatestObservation {
  readonly id: string
  readonly operationKey: string
  readonly item: string
  readonly outcome: 'seen' | 'not-seen' | 'not-applicable'
  readonly note: string
  readonly since: Date | null
  readonly personId: string
}

/** The latest result of one tested area. */
export interface LatestInspection {
  readonly id: string
  readonly operationKey: string
  readonly item: string
  readonly partId: string | null
  readonly method: string
  readonly pressure: number | null
  readonly result: 'no-indication' | 'indication' | 'not-tested'
  readonly note: string
  readonly inspectorId: string
  readonly personId: string
  /** The owner lets the part pass as this result found it. */
  readonly conceded: boolean
}

/** A part in its place, with its lot or serial; empty while nobody has typed one. */
export interface PlacedLot extends PlacedPart {
  readonly lot: string
}

/** What the owner lets pass: one requirement, within an interval of values. */
export interface LiveConcession {
  readonly findingId: string
  readonly requirement: string
  readonly low: number
  readonly high: number
  readonly reason: string
  readonly by: string
}

/** A sign-off that nothing has re-opened, or one that something has. */
export interface KnownSignOff {
  readonly id: string
  readonly operationKey: string
  readonly definitionHash: string
  readonly live: boolean
}

export interface OpenFinding {
  readonly operationKey: string | null
  readonly title: string
  readonly stops: boolean
}

/** All that a job's verdicts and the state of its operations follow from, as it stands in one transaction. */
export interface Evidence {
  readonly jobId: string
  readonly planRevision: number
  readonly plan: Plan
  readonly settings: JudgeSettings
  readonly placed: readonly PlacedLot[]
  readonly passes: readonly (FeaturePass & { readonly id: string; readonly operationKey: string })[]
  readonly observations: readonly LatestObservation[]
  readonly inspections: readonly LatestInspection[]
  readonly concessions: readonly LiveConcession[]
  readonly signOffs: readonly KnownSignOff[]
  readonly openFindings: readonly OpenFinding[]
  /** Keys of the operations on which somebody's clock ran. */
  readonly worked: readonly string[]
}
