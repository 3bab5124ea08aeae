import type { FeatureDefinition, PlacedPart, ReaderUnit, Requirement, Verdict } from '@tenths/domain'
import { defaultJudgeSettings, indexFeatures, judge, measurementsOf } from '@tenths/domain'
import { toFeaturePass } from '../readings/counting.ts'
import type { Pass } from '../sheet/operation-sheet.ts'

interface Judged {
  readonly features: readonly FeatureDefinition[]
  readonly requirements: readonly Requirement[]
  readonly placed: readonly PlacedPart[]
}

/** The service's own judge over all that is measured; it judges each requirement once, when it is first asked for it. */
export function judgeOf(sheet: Judged, passes: readonly Pass[], unit: ReaderUnit): (requirement: Requirement) => Verdict {
  const features = indexFeatures(sheet.features)
  const measurements = measurementsOf(sheet.placed, passes.map(toFeaturePass))
  const judged = new Map<Requirement, Verdict>()
  return (requirement) => {
    const verdict = judged.get(requirement) ?? judge(requirement, measurements, features, { ...defaultJudgeSettings, unit })
    judged.set(requirement, verdict)
    return verdict
  }
}

/** The verdict on each requirement of the step from all that is measured, in the plan's order. */
export function judgeSheet(sheet: Judged, passes: readonly Pass[], unit: ReaderUnit): readonly Verdict[] {
  return sheet.requirements.map(judgeOf(sheet, passes, unit))
}
