import type { FeatureReference } from '../features/feature.ts'
import { bigEndWeight, pinWeight, pistonWeight, smallEndWeight } from '../features/references.ts'
import { COMMON_PRACTICE, guardParameter, limitsOf, parameter, remedy, sayBoth } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

interface WeighedFamily {
  readonly key: string
  readonly title: string
  /** One part of it, inside a sentence. */
  readonly one: (cylinder: number) => string
  readonly reference: (cylinder: number) => FeatureReference
  /** Where metal comes off without weakening the part. */
  readonly words: string
}

const families: readonly WeighedFamily[] = [
  {
    key: 'piston-weight',
    title: 'Weights of pistons',
    one: (cylinder) => `piston ${cylinder}`,
    reference: pistonWeight,
    words: 'Off the balance pads or inside the pin bosses, never off crown, skirt or ring lands. If one part alone is light, change that one.',
  },
  {
    key: 'pin-weight',
    title: 'Weights of pins',
    one: (cylinder) => `pin ${cylinder}`,
    reference: pinWeight,
    words: 'Off its bore at both ends alike, ground and not turned; else change it for one as light.',
  },
  {
    key: 'big-end-weight',
    title: 'Weights of rods at their big ends',
    one: (cylinder) => `rod ${cylinder} big end`,
    reference: bigEndWeight,
    words: 'Off the pad of the cap, along the rod, and polish it out: no mark across the rod, none near the bolts.',
  },
  {
    key: 'small-end-weight',
    title: 'Weights of rods at their small ends',
    one: (cylinder) => `rod ${cylinder} small end`,
    reference: smallEndWeight,
    words: 'Off the pad over the pin, along the rod, and polish it out: no mark across the rod. Then weigh its big end again.',
  },
]

/** How far the parts of a set may differ: 1 g, as balancing shops mostly work. */
const USUAL_SPREAD = 1_000

/** Pistons, pins and both rod ends matched to the lightest of their set: metal only comes off. One part alone has no match. */
export const matchedWeights: readonly FitDefinition[] = families.map((family) => ({
  key: family.key,
  title: family.title,
  quantity: 'mass',
  critical: false,
  judgedAt: ['balance'],
  parameters: [
    parameter('spread', 'Greatest difference within the set', 'mass', USUAL_SPREAD, COMMON_PRACTICE),
    guardParameter('accepted'),
  ],
  lines({ cylinders }, read) {
    if (cylinders.length < 2) return []
    const set = cylinders.map(({ cylinder }) => family.reference(cylinder))
    const high = read('spread')
    return cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Weight of ${family.one(cylinder)}, over the lightest`,
      quantity: 'mass',
      measurand: { kind: 'apart', feature: family.reference(cylinder), set, from: 'least' },
      rule: {
        kind: 'computed',
        limits: limitsOf({ high, target: 0 }),
        formula: 'weight − lightest of the set, at most the spread allowed',
        worked: [`Set of ${set.length}: at most ${sayBoth(high, 'mass')} over the lightest, best none`],
      },
      remedy: { low: null, high: remedy('lighten', family.reference(cylinder), family.words) },
    }))
  },
}))
