import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type FeatureDefinition } from '@tenths/domain'
import { familyOf, type Family } from './families.ts'
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

/** The size that a feature has by its plan, or that parts of its family usually have; null where neither says. */
export function sizeOf(definition: FeatureDefinition, unit: DemoGauge['unit']): number | null {
  return definition.nominal ?? usual[unit][familyOf(definition)] ?? null
}
