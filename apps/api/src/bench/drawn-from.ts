import { partOfPlace, ringClocks, type Operation, type PartKind, type Plan } from '@tenths/domain'

const rings: readonly PartKind[] = ['top-ring', 'second-ring', 'oil-ring']

/** What a step's pictures of this engine are drawn from: how it stands, which way everything faces, where gaps lie. */
export function drawnFrom(plan: Plan, operation: Operation) {
  const { engine: { arrangement, bankAngle, rotation }, parts } = plan.input
  return {
    layout: { arrangement, bankAngle, rotation, pistonsHaveFrontMark: parts.piston.hasFrontMark },
    orientation: plan.orientation,
    ringClocks: handlesRings(operation) ? ringClocks(plan) : [],
  }
}

/** A step that measures rings, or at which their clocking is seen. */
function handlesRings({ features, observations }: Operation): boolean {
  return features.some(({ place }) => rings.includes(partOfPlace(place).kind))
    || observations.some(({ key }) => key === 'clocked')
}
