import { headsOf } from '../engine/valves.ts'
import type { FeatureReference, Quantity } from '../features/feature.ts'
import {
  mainBoltAngle, mainBoltTorque, rodBoltAngle, rodBoltStretch, rodBoltTorque,
} from '../features/references.ts'
import { headBoltAngle, headBoltStretch, headBoltTorque } from '../features/top-end/references.ts'
import { guardParameter, reading, remedy } from './building-blocks.ts'
import type { FitContext, FitDefinition } from './fit-definition.ts'

/** A family of bolts: the maker tightens it by torque, by stretch or by angle, and a sheet for one of them is enough. */
interface BoltFamily {
  readonly key: string
  readonly title: string
  readonly positions: (context: FitContext) => readonly number[]
  readonly judgedAt: string
  readonly ways: readonly Way[]
}

interface Way {
  readonly key: string
  readonly quantity: Quantity
  readonly reference: (position: number) => FeatureReference
}

const stretch = (reference: Way['reference']): Way => ({ key: 'stretch', quantity: 'length', reference })
const torque = (reference: Way['reference']): Way => ({ key: 'torque', quantity: 'torque', reference })
const angle = (reference: Way['reference']): Way => ({ key: 'angle', quantity: 'angle', reference })

const families: readonly BoltFamily[] = [
  {
    key: 'rod-bolt',
    title: 'Rod bolt',
    positions: ({ cylinders }) => cylinders.map(({ cylinder }) => cylinder),
    judgedAt: 'final-rod-bolts',
    ways: [stretch(rodBoltStretch), torque(rodBoltTorque), angle(rodBoltAngle)],
  },
  {
    key: 'main-bolt',
    title: 'Main cap bolt',
    positions: ({ engine }) => Array.from({ length: engine.mains.count }, (_, index) => index + 1),
    judgedAt: 'install-crank',
    ways: [torque(mainBoltTorque), angle(mainBoltAngle)],
  },
  {
    key: 'head-bolt',
    title: 'Head bolt',
    positions: ({ engine }) => headsOf(engine),
    judgedAt: 'install-heads',
    ways: [stretch(headBoltStretch), torque(headBoltTorque), angle(headBoltAngle)],
  },
]

/** Tightening figures: only their maker knows them, so that without a sheet there is no verdict. */
export const boltFits: readonly FitDefinition[] = families.flatMap((family) =>
  family.ways.map((way): FitDefinition => {
    const title = `${family.title} ${way.key}`
    return {
      key: `${family.key}-${way.key}`,
      title,
      quantity: way.quantity,
      critical: true,
      judgedAt: [family.judgedAt],
      sheetFamily: { key: `${family.key}s`, title: `${family.title}s` },
      parameters: [guardParameter('accepted')],
      lines: (context) =>
        family.positions(context).map((position) => ({
          position,
          title: `${title} ${position}`,
          quantity: way.quantity,
          measurand: reading(way.reference(position), 'each'),
          rule: {
            kind: 'sheet-needed',
            reason: 'Bolts are tightened by their maker’s figure, lubricant and method.',
          },
          remedy: {
            low: remedy('investigate', null, 'Check lubricant and wrench, then tighten on.'),
            high: remedy('replace', null, 'A bolt stretched too far is scrap.'),
          },
        })),
    }
  }),
)
