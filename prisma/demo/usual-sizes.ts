import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type FeatureDefinition } from '@tenths/domain'
import { familyOf, weighed, type Family, type Weighed } from './families.ts'
import type { DemoGauge } from './gauges.ts'

const inch = NANOMETRES_PER_INCH
const millimetre = NANOMETRES_PER_MILLIMETRE

/** Sizes that no plan names, because they come with valves, guides and camshaft: what the demo's engines have. Invented. */
const usual: Record<DemoGauge['unit'], Partial<Record<Family, number>>> = {
  inch: {
    stem: 0.342 * inch, guide: 0.3435 * inch, 'guide-hole': 0.5625 * inch, 'guide-body': 0.564 * inch, 'seat-hole': 1.75 * inch,
    'seat-body': 1.754 * inch, journal: 1.5 * inch, bearing: 1.503 * inch, 'lifter-bore': 0.8435 * inch, body: 0.842 * inch,
  },
  millimetre: {
    stem: 7 * millimetre, guide: 7.04 * millimetre, 'guide-hole': 12 * millimetre, 'guide-body': 12.04 * millimetre,
    'seat-hole': 36 * millimetre, 'seat-body': 36.15 * millimetre,
  },
}

/** Weights of the parts of an engine with a bore of 100 mm, in milligrams: others weigh as the cube of it. Invented. */
const weights: Record<Weighed, number> = {
  weight: 560_000, 'pin-weight': 142_000, 'big-end-weight': 448_000, 'small-end-weight': 172_000, 'ring-set-weight': 51_000,
  'retainers-weight': 2_400, 'shells-weight': 43_000,
}
const HUNDRED_MILLIMETRES = 100 * millimetre

/** What is known of the engine whose parts are measured: the unit it is drawn in, and its nominal bore. */
interface Measured {
  readonly unit: DemoGauge['unit']
  readonly step: { readonly bore: number }
}

/** The size that a feature has by its plan, or that parts of its family usually have; null where neither says. */
export function sizeOf(definition: FeatureDefinition, { unit, step }: Measured): number | null {
  const family = familyOf(definition)
  if (isWeighed(family)) return weights[family] * (step.bore / HUNDRED_MILLIMETRES) ** 3
  return definition.nominal ?? usual[unit][family] ?? null
}

const isWeighed = (family: Family): family is Weighed => (weighed as readonly string[]).includes(family)
