import { stages, type Stage } from '@tenths/domain'

/** Steps and signed steps of each stage, in the order in which a job goes through them. */
export function countStages(
  route: readonly { stage: Stage; state: string }[],
): { stage: Stage; operations: number; signed: number }[] {
  return stages.map((stage) => {
    const steps = route.filter((step) => step.stage === stage)
    return { stage, operations: steps.length, signed: steps.filter(({ state }) => state === 'signed').length }
  })
}
