import type { FeatureDefinition } from '@tenths/domain'
import { aimAt, type Aim } from './aim.ts'
import { familyOf, making } from './families.ts'
import { scatterOf, type Scatter } from './scatter.ts'
import type { Situation } from './situation.ts'
import { readingStep, roundInto } from './typing.ts'

/** Readings of one pass before they are typed, in the order a hand moves. */
export interface Measuring {
  readonly aim: Aim
  readonly values: readonly { readonly point: string; readonly value: number }[]
}

/**
 * What a careful machinist would read off a part made toward its aim: each part a little off, a little taper from end to
 * end, a little out of round, and chance on top; read in the steps that the gauge shows.
 * @param name whose chance it is: job, feature and pass
 */
export function measure(definition: FeatureDefinition, situation: Situation, name: readonly (string | number)[]): Measuring {
  const aim = aimAt(definition, situation)
  const scatter = scatterOf(...name)
  const { betweenParts, withinPart, asFound } = making[familyOf(definition)]
  const middle = scatter.bell() * betweenParts
  const isFound = definition.points.every(({ station }) => aim.windowAt(station).high === Infinity) && asFound.unevenness > 0
  const room = Number.isFinite(aim.spread) ? Math.max(0, (aim.spread - aim.gauge.resolution) / 2) : Infinity
  const unevenness = Math.min(isFound ? asFound.unevenness : withinPart, room)
  const shape = shapeOf(definition, scatter, isFound)
  const values = definition.points.map((point, index) => {
    const { low, high, aim: goal } = aim.windowAt(point.station)
    const step = readingStep(aim.gauge, high - low)
    return { point: point.key, value: roundInto(goal + middle + unevenness * (shape[index] ?? 0), step, low, high) }
  })
  return { aim, values }
}

/** Between −1 and 1 for each point: taper along the stations, ovality between the axes, chance at each. */
function shapeOf(definition: FeatureDefinition, scatter: Scatter, isFound: boolean): readonly number[] {
  const stations = [...new Set(definition.points.map(({ station }) => station))]
  const axes = [...new Set(definition.points.map(({ axis }) => axis))]
  // Wear is greatest where the rings turn back, at the top, across the thrust; a machine errs either way.
  const taper = (isFound ? -1 : scatter.pick([-1, 1])) * scatter.between(0.2, 0.6)
  const oval = (isFound ? 1 : scatter.pick([-1, 1])) * scatter.between(0.1, 0.3)
  return definition.points.map(({ station, axis }) => {
    const along = stations.length === 1 ? 0 : (2 * stations.indexOf(station)) / (stations.length - 1) - 1
    const around = axes.indexOf(axis) % 2 === 0 ? 1 : -1
    return Math.max(-1, Math.min(1, taper * along + oval * around + 0.4 * scatter.bell()))
  })
}
