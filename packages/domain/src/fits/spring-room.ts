import type { Valve } from '../engine/valves.ts'
import { valveKinds, valveKindTitles, valvesOf } from '../engine/valves.ts'
import type { FeatureReference } from '../features/feature.ts'
import { coilBindRoom, retainerRoom } from '../features/top-end/references.ts'
import type { RemedyRule } from '../judging/requirement.ts'
import {
  FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy, say, THOUSANDTH,
} from './building-blocks.ts'
import type { FitDefinition, FitParameter, ParameterReader } from './fit-definition.ts'

interface Family {
  readonly key: string
  readonly title: string
  readonly formula: string
  readonly parameters: readonly FitParameter[]
  readonly reference: (valve: Valve) => FeatureReference
  readonly adviceHigh: (read: ParameterReader) => number | null
  readonly low: RemedyRule
}

const families: readonly Family[] = [
  {
    key: 'coil-bind',
    title: 'spring to coil bind',
    formula: 'installed height − lift − height of the closed spring, at least the limit; much more lets it surge',
    parameters: [
      parameter('low', 'Least', 'length', 60 * THOUSANDTH, FROM_MEMORY),
      parameter('usual-high', 'Advised at most', 'length', 100 * THOUSANDTH, FROM_MEMORY),
    ],
    reference: coilBindRoom,
    adviceHigh: (read) => read('usual-high'),
    low: remedy('replace', null, 'Take shims out, or fit a spring that closes shorter or a retainer that sits higher.'),
  },
  {
    key: 'retainer-to-seal',
    title: 'retainer to seal',
    formula: 'retainer to seal or guide, less the lift, at least the limit',
    parameters: [parameter('low', 'Least', 'length', 50 * THOUSANDTH, FROM_MEMORY)],
    reference: retainerRoom,
    adviceHigh: () => null,
    low: remedy('face', null, 'Cut the guide’s boss down, with the seal off, or fit another retainer.'),
  },
]

/** Room that a spring and its retainer keep at full valve lift: without it the valve train is broken. */
export const springRooms: readonly FitDefinition[] = families.flatMap((family) =>
  valveKinds.map((kind) => {
    const title = `${valveKindTitles[kind]} ${family.title}`
    return {
      key: `${kind}-${family.key}`,
      title,
      critical: true,
      judgedAt: ['assemble-heads'],
      parameters: [...family.parameters, guardParameter('accepted')],
      lines: ({ engine }, read) => {
        const low = read('low')
        const adviceHigh = family.adviceHigh(read)
        return valvesOf(engine, kind).map((valve) => ({
          position: valve.number,
          title: `${title} ${valve.number}`,
          quantity: 'length',
          measurand: reading(family.reference(valve), 'each'),
          rule: {
            kind: 'computed',
            limits: limitsOf({ low, adviceHigh }),
            formula: family.formula,
            worked: [`Least: ${say(low)}`, ...(adviceHigh === null ? [] : [`Advised at most: ${say(adviceHigh)}`])],
          },
          remedy: { low: family.low, high: null },
        }))
      },
    } satisfies FitDefinition
  }),
)
