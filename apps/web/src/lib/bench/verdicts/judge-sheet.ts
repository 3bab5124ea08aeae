import type { FeatureDefinition, PlacedPart, ReaderUnit, Requirement, Verdict } from '@tenths/domain'
import { defaultJudgeSettings, indexFeatures, judge, measurementsOf } from '@tenths/domain'
import { toFeaturePass } from '../readings/counting.ts'
import type { Pass } from '../sheet/operation-sheet.ts'

interface Judged {
  readonly features: readonly FeatureDefinition[]
  readonly requirements: readonly Requirement[]
  readonly placed: readonly PlacedPart[]
}

/** The verdict on each requirement of the step from all that is measured, in the plan's order: the service's own judge. */
export function judgeSheet(sheet: Judged, passes: readonly Pass[], unit: ReaderUnit): readonly Verdict[] {
  const features = indexFeatures(sheet.features)
  const measurements = measurementsOf(sheet.placed, passes.map(toFeaturePass))
  return sheet.requirements.map((requirement) =>
    judge(requirement, measurements, features, { ...defaultJudgeSettings, unit }))
}
