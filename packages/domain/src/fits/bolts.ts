import type { FeatureReference, Quantity } from '../features/feature.ts'
import { mainBoltTorque, rodBoltStretch, rodBoltTorque } from '../features/references.ts'
import { guardParameter, reading, remedy } from './building-blocks.ts'
import type { FitContext, FitDefinition } from './fit-definition.ts'

interface BoltFit {
  readonly key: string
  readonly title: string
  readonly quantity: Quantity
  readonly reference: (position: number) => FeatureReference
  readonly positions: (context: FitContext) => readonly number[]
  readonly judgedAt: string
}

const rods = ({ cylinders }: FitContext) => cylinders.map(({ cylinder }) => cylinder)

const bolts: readonly BoltFit[] = [
  {
    key: 'rod-bolt-stretch',
    title: 'Rod bolt stretch',
    quantity: 'length',
    reference: rodBoltStretch,
    positions: rods,
    judgedAt: 'final-rod-bolts',
  },
  {
    key: 'rod-bolt-torque',
    title: 'Rod bolt torque',
    quantity: 'torque',
    reference: rodBoltTorque,
    positions: rods,
    judgedAt: 'final-rod-bolts',
  },
  {
    key: 'main-bolt-torque',
    title: 'Main cap bolt torque',
    quantity: 'torque',
    reference: mainBoltTorque,
    positions: ({ engine }) => Array.from({ length: engine.mains.count }, (_, index) => index + 1),
    judgedAt: 'install-crank',
  },
]

/** Tightening figures: only their maker knows them, so that without a sheet there is no verdict. */
export const boltFits: readonly FitDefinition[] = bolts.map((bolt) => ({
  key: bolt.key,
  title: bolt.title,
  critical: true,
  judgedAt: [bolt.judgedAt],
  parameters: [guardParameter('accepted')],
  lines: (context) =>
    bolt.positions(context).map((position) => ({
      position,
      title: `${bolt.title} ${position}`,
      quantity: bolt.quantity,
      measurand: reading(bolt.reference(position), 'each'),
      rule: {
        kind: 'sheet-needed',
        reason: 'Bolts are tightened by their maker’s figure, lubricant and method.',
      },
      remedy: {
        low: remedy('investigate', null, 'Check lubricant and wrench, then tighten on.'),
        high: remedy('replace', null, 'A bolt stretched too far is scrap.'),
      },
    })),
}))
