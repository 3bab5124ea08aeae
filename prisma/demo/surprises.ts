import { featureKey, type FeatureDefinition, parseLength, parseQuantity } from '@tenths/domain'
import { gaugeOf } from './gauges.ts'
import type { Surprise } from './hands.ts'
import type { Situation } from './situation.ts'

/** Every point at this clearance, read with a gauge set on the mating part itself. */
export function clearanceOnMate(text: string, mark: string): Surprise {
  return (definition) => ({ gauge: gaugeOf(mark), onMate: true, values: definition.points.map(() => parseLength(text, 'inch')) })
}

/** A hole at this clearance over its mate's greatest reading, measured as a size of its own. */
export function clearanceBySizes(text: string, mark: string): Surprise {
  return (definition, situation) => {
    const size = greatestOfMate(definition, situation) + parseLength(text, 'inch')
    return { gauge: gaugeOf(mark), onMate: false, values: definition.points.map(() => size) }
  }
}

/** All as expected, but off by this much. */
export function offBy(text: string): Surprise {
  return (_definition, _situation, { aim, values }) => ({
    gauge: aim.gauge, onMate: aim.setOn !== null, values: values.map(({ value }) => value + parseLength(text, 'inch')),
  })
}

/** All as expected on the scales, but heavier by so many grams. */
export function heavierBy(grams: string): Surprise {
  return (_definition, _situation, { aim, values }) => ({
    gauge: aim.gauge, onMate: false, values: values.map(({ value }) => value + parseQuantity(grams, 'gram')),
  })
}

/** As expected but at these points, which are off by this much. */
export function offAt(points: readonly string[], text: string): Surprise {
  return (_definition, _situation, { aim, values }) => ({
    gauge: aim.gauge,
    onMate: aim.setOn !== null,
    values: values.map(({ point, value }) => (points.includes(point) ? value + parseLength(text, 'inch') : value)),
  })
}

function greatestOfMate(definition: FeatureDefinition, situation: Situation): number {
  for (const { measurand } of situation.plan.requirements) {
    if (measurand.kind !== 'clearance' || featureKey(measurand.hole) !== featureKey(definition)) continue
    return Math.max(...(situation.latest(measurand.shaft)?.values ?? []).map(({ value }) => value))
  }
  throw new Error(`${featureKey(definition)} has no mate.`)
}
