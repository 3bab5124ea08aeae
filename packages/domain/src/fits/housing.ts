import type { FeatureReference } from '../features/feature.ts'
import { bigEnd, mainHousing } from '../features/references.ts'
import {
  between,
  FROM_MEMORY,
  guardParameter,
  parameter,
  reading,
  remedy,
  say,
  TENTH,
} from './building-blocks.ts'
import type { FitContext, FitDefinition } from './fit-definition.ts'
import { formLine } from './form.ts'

interface HousingFamily {
  readonly key: string
  readonly title: string
  readonly reference: (position: number) => FeatureReference
  readonly positions: (context: FitContext) => readonly number[]
  readonly nominal: (context: FitContext) => number
  readonly judgedAt: readonly string[]
  /** Starter tolerance on each side of nominal, in tenths. */
  readonly tolerance: number
  readonly looseRemedy: string
}

const families: readonly HousingFamily[] = [
  {
    key: 'main-housing',
    title: 'Main housing',
    reference: mainHousing,
    tolerance: 5,
    positions: ({ engine }) => Array.from({ length: engine.mains.count }, (_, index) => index + 1),
    nominal: ({ engine }) => engine.mains.housing,
    judgedAt: ['align-hone', 'measure-block'],
    looseRemedy: 'Cut the cap faces and align hone again.',
  },
  {
    key: 'big-end',
    title: 'Rod big end',
    reference: bigEnd,
    tolerance: 3,
    positions: ({ cylinders }) => cylinders.map(({ cylinder }) => cylinder),
    nominal: ({ engine }) => engine.rodJournals.housing,
    judgedAt: ['resize-rods', 'measure-rods'],
    looseRemedy: 'Cut cap and rod faces and hone again; a cracked-cap rod is scrap.',
  },
]

/** Size and roundness of the torqued housings that shells are pressed into: too large and a shell turns. */
export const housingFits: readonly FitDefinition[] = families.flatMap((family) => [
  sizeFit(family),
  roundFit(family),
])

function sizeFit(family: HousingFamily): FitDefinition {
  return {
    key: `${family.key}-size`,
    title: `${family.title} size`,
    critical: true,
    judgedAt: family.judgedAt,
    parameters: [
      parameter('tolerance', 'Each side of nominal', 'length', family.tolerance * TENTH, FROM_MEMORY),
      guardParameter('accepted'),
    ],
    lines(context, read) {
      const nominal = family.nominal(context)
      const tolerance = read('tolerance')
      const [low, high] = [nominal - tolerance, nominal + tolerance]
      return family.positions(context).map((position) => ({
        position,
        title: `${family.title} ${position} size`,
        quantity: 'length',
        measurand: reading(family.reference(position), 'each'),
        rule: {
          kind: 'computed',
          limits: between(low, high, nominal),
          formula: 'nominal housing − and + the tolerance, at every point',
          worked: [`${say(nominal)} ∓ ${say(tolerance)}: low ${say(low)}, high ${say(high)}`],
        },
        remedy: {
          low: remedy('hone', family.reference(position), 'Hone with the cap torqued.'),
          high: remedy('investigate', family.reference(position), family.looseRemedy),
        },
      }))
    },
  }
}

function roundFit(family: HousingFamily): FitDefinition {
  return {
    key: `${family.key}-out-of-round`,
    title: `${family.title} out-of-round`,
    critical: false,
    judgedAt: family.judgedAt,
    parameters: [
      parameter('target', 'Better within', 'length', 3 * TENTH, FROM_MEMORY),
      parameter('high', 'Greatest', 'length', 5 * TENTH, FROM_MEMORY),
      guardParameter('accepted'),
    ],
    lines: (context, read) =>
      family
        .positions(context)
        .map((position) =>
          formLine(
            'out-of-round',
            family.reference(position),
            `${family.title} ${position}`,
            position,
            { target: read('target'), high: read('high') },
            remedy('investigate', family.reference(position), family.looseRemedy),
          ),
        ),
  }
}
