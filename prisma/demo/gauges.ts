import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Quantity } from '@tenths/domain'
import { weighed, type Family } from './families.ts'

/** A gauge of the demo shop; its mark is what is engraved on it. Uncertainties from memory. */
export interface DemoGauge {
  readonly mark: string
  readonly name: string
  readonly kind: string
  readonly quantity: Quantity
  /** The unit it is marked in, which is the unit people type. */
  readonly unit: 'inch' | 'millimetre'
  readonly resolution: number
  readonly analogue: boolean
  readonly clockwiseIsSmaller: boolean
  readonly standardUncertainty: number
  /** Days from the day of loading to the end of its calibration. */
  readonly calibratedFor: number
  readonly measures: readonly Family[]
  /** Least and greatest size that it can be put on, in its quantity's base unit. */
  readonly reach: readonly [number, number]
  /** Reads clearances only: it must be set on the mating part. */
  readonly onlyOnMate: boolean
}

const tenth = NANOMETRES_PER_INCH / 10_000
const micron = NANOMETRES_PER_MILLIMETRE / 1_000
const anyReach = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const

type Sort = Pick<DemoGauge, 'kind' | 'resolution' | 'analogue' | 'standardUncertainty' | 'measures'> & Partial<DemoGauge>

/** Sorts of gauge in inches and in millimetres, without marks and reaches. */
const micrometer = {
  kind: 'outside-micrometer',
  measures: [
    'main-journal', 'rod-journal', 'skirt', 'diameter', 'stem', 'journal', 'body', 'guide-body', 'seat-body',
  ],
} as const
const inchMicrometer: Sort = { ...micrometer, resolution: tenth / 2, analogue: false, standardUncertainty: tenth / 2 }
const metricMicrometer: Sort = { ...micrometer, resolution: micron, analogue: false, standardUncertainty: 1.2 * micron }
const boreGauge = { kind: 'dial-bore-gauge', analogue: true, clockwiseIsSmaller: true } as const
const largeBores = ['bore', 'main-housing', 'big-end', 'bearing', 'seat-hole'] as const
const smallBores = ['small-end', 'pin-bore', 'lifter-bore'] as const
const guideBores = ['guide', 'guide-hole'] as const
const plays = [
  'end-play', 'final-end-play', 'pin-end-play', 'deck-clearance', 'back-clearance', 'run-out', 'seat-run-out', 'valve-room',
] as const
const calipered = ['seat-width', 'margin', 'installed-height', 'coil-bind-room', 'retainer-room', 'pick-up-to-pan'] as const
const gaps = ['end-gap', 'rail-gap', 'side-clearance', 'rod-side-clearance', 'flatness', 'lash'] as const
const bolts = ['stretch', 'set'] as const

function gauge(
  mark: string, name: string, unit: DemoGauge['unit'], sort: Sort, reach: DemoGauge['reach'], calibratedFor: number,
): DemoGauge {
  return { quantity: 'length', clockwiseIsSmaller: false, onlyOnMate: false, ...sort, mark, name, unit, reach, calibratedFor }
}

const inches = (low: number, high: number): DemoGauge['reach'] => [low * NANOMETRES_PER_INCH, high * NANOMETRES_PER_INCH]
const millimetres = (low: number, high: number): DemoGauge['reach'] => [
  low * NANOMETRES_PER_MILLIMETRE, high * NANOMETRES_PER_MILLIMETRE,
]

/** In the order in which a hand reaches for them: the first that fits is taken. */
export const gauges: readonly DemoGauge[] = [
  gauge('M1', 'Micrometer 0–1 in', 'inch', inchMicrometer, inches(0, 1), 140),
  gauge('M2', 'Micrometer 1–2 in', 'inch', inchMicrometer, inches(1, 2), 140),
  gauge('M3', 'Micrometer 2–3 in', 'inch', inchMicrometer, inches(2, 3), 140),
  gauge('M4', 'Micrometer 3–4 in', 'inch', inchMicrometer, inches(3, 4), 88),
  gauge('M5', 'Micrometer 4–5 in', 'inch', inchMicrometer, inches(4, 5), 88),
  gauge('M3-OLD', 'Micrometer 2–3 in, old set', 'inch', inchMicrometer, inches(2, 3), -23),
  gauge('B1', 'Dial bore gauge 1.4–6 in', 'inch', {
    ...boreGauge, measures: largeBores, resolution: tenth, standardUncertainty: 0.75 * tenth,
  }, inches(1.4, 6), 61),
  gauge('B2', 'Small-bore gauge 0.7–1.5 in', 'inch', {
    ...boreGauge, measures: smallBores, resolution: tenth, standardUncertainty: 0.75 * tenth,
  }, inches(0.7, 1.5), 61),
  gauge('B3', 'Small-hole gauge 0.2–0.7 in', 'inch', {
    kind: 'small-hole-gauge', measures: guideBores, resolution: tenth / 2, analogue: false, standardUncertainty: tenth / 2,
  }, inches(0.2, 0.7), 61),
  gauge('PF1', 'Pin-fit gauge', 'inch', {
    kind: 'pin-fit-gauge', measures: smallBores, resolution: tenth, analogue: true, standardUncertainty: tenth / 4,
    onlyOnMate: true,
  }, inches(0.7, 1.5), 203),
  gauge('FB1', 'Feeler blades', 'inch', {
    kind: 'feeler', measures: gaps, resolution: 5 * tenth, analogue: false, standardUncertainty: 1.5 * tenth,
  }, anyReach, 300),
  gauge('DI1', 'Dial indicator', 'inch', {
    kind: 'indicator', measures: plays, resolution: 10 * tenth, analogue: true, standardUncertainty: tenth,
  }, anyReach, 33),
  gauge('CA1', 'Caliper, six inches', 'inch', {
    kind: 'caliper', measures: calipered, resolution: 5 * tenth, analogue: false, standardUncertainty: 5 * tenth,
  }, anyReach, 77),
  gauge('HG1', 'Deck height gauge', 'inch', {
    kind: 'height-gauge', measures: ['deck-height'], resolution: 5 * tenth, analogue: false, standardUncertainty: 3 * tenth,
  }, inches(5, 14), 33),
  gauge('ST1', 'Bolt stretch gauge', 'inch', {
    kind: 'stretch-gauge', measures: bolts, resolution: tenth, analogue: false, standardUncertainty: tenth,
  }, anyReach, 95),
  gauge('TW1', 'Torque wrench, lbf·ft', 'inch', {
    kind: 'torque-wrench', quantity: 'torque', measures: ['torque'], resolution: 678, analogue: false,
    standardUncertainty: 1_000,
  }, anyReach, 45),
  gauge('TB1', 'Beam wrench, lbf·ft', 'inch', {
    kind: 'torque-wrench', quantity: 'torque', measures: ['turning-torque-crank', 'turning-torque-assembled'],
    resolution: 678, analogue: true, standardUncertainty: 200,
  }, anyReach, 45),
  gauge('CP1', 'Crosshatch protractor', 'inch', {
    kind: 'protractor', quantity: 'angle', measures: ['crosshatch'], resolution: 1_000, analogue: false, standardUncertainty: 600,
  }, anyReach, 210),
  gauge('RT1', 'Roughness tester', 'inch', {
    kind: 'roughness-tester', quantity: 'roughness', measures: ['roughness'], resolution: 10, analogue: false,
    standardUncertainty: 12,
  }, anyReach, 150),
  gauge('AG1', 'Angle gauge', 'inch', {
    kind: 'angle-gauge', quantity: 'angle', measures: ['angle'], resolution: 1_000, analogue: true, standardUncertainty: 500,
  }, anyReach, 300),
  gauge('LT1', 'Leak-down tester, psi', 'inch', {
    kind: 'pressure-gauge', quantity: 'pressure', measures: ['leak-down'], resolution: 6_895, analogue: true,
    standardUncertainty: 3_400,
  }, anyReach, 160),
  gauge('SC1', 'Scales to 2 kg, with rod hanger', 'inch', {
    kind: 'scales', quantity: 'mass', measures: weighed, resolution: 100, analogue: false, standardUncertainty: 60,
  }, anyReach, 110),
  gauge('BM1', 'Balancing machine, oz·in', 'inch', {
    kind: 'balancing-machine', quantity: 'unbalance', measures: ['unbalance'], resolution: 720, analogue: false,
    standardUncertainty: 7_200,
  }, anyReach, 180),
  gauge('SP1', 'Spring tester, lbf', 'inch', {
    kind: 'spring-tester', quantity: 'force', measures: ['spring-load'], resolution: 2_224, analogue: true,
    standardUncertainty: 2_500,
  }, anyReach, 120),
  gauge('MM1', 'Micrometer 0–25 mm', 'millimetre', metricMicrometer, millimetres(0, 25), 118),
  gauge('MM2', 'Micrometer 25–50 mm', 'millimetre', metricMicrometer, millimetres(25, 50), 118),
  gauge('MM3', 'Micrometer 50–75 mm', 'millimetre', metricMicrometer, millimetres(50, 75), 118),
  gauge('MM4', 'Micrometer 75–100 mm', 'millimetre', metricMicrometer, millimetres(75, 100), 118),
  gauge('MB1', 'Bore gauge 35–160 mm', 'millimetre', {
    ...boreGauge, measures: largeBores, resolution: 2 * micron, standardUncertainty: 1.6 * micron,
  }, millimetres(35, 160), 118),
  gauge('MB2', 'Bore gauge 18–35 mm', 'millimetre', {
    ...boreGauge, measures: smallBores, resolution: 2 * micron, standardUncertainty: 1.6 * micron,
  }, millimetres(18, 35), 118),
  gauge('MB3', 'Small-hole gauge 5–18 mm', 'millimetre', {
    kind: 'small-hole-gauge', measures: guideBores, resolution: micron, analogue: false, standardUncertainty: micron,
  }, millimetres(5, 18), 118),
  gauge('MPF1', 'Pin-fit gauge, metric', 'millimetre', {
    kind: 'pin-fit-gauge', measures: smallBores, resolution: micron, analogue: true, standardUncertainty: 0.6 * micron,
    onlyOnMate: true,
  }, millimetres(18, 35), 203),
  gauge('MFB1', 'Feeler blades, metric', 'millimetre', {
    kind: 'feeler', measures: gaps, resolution: 10 * micron, analogue: false, standardUncertainty: 4 * micron,
  }, anyReach, 300),
  gauge('MDI1', 'Indicator, metric', 'millimetre', {
    kind: 'indicator', measures: plays, resolution: 10 * micron, analogue: true, standardUncertainty: 2 * micron,
  }, anyReach, 33),
  gauge('MCA1', 'Caliper, 150 mm', 'millimetre', {
    kind: 'caliper', measures: calipered, resolution: 10 * micron, analogue: false, standardUncertainty: 10 * micron,
  }, anyReach, 77),
  gauge('MHG1', 'Deck height gauge, metric', 'millimetre', {
    kind: 'height-gauge', measures: ['deck-height'], resolution: 10 * micron, analogue: false, standardUncertainty: 8 * micron,
  }, millimetres(100, 350), 33),
  gauge('MST1', 'Bolt stretch gauge, metric', 'millimetre', {
    kind: 'stretch-gauge', measures: bolts, resolution: micron, analogue: false, standardUncertainty: 2 * micron,
  }, anyReach, 95),
  gauge('MTW1', 'Torque wrench, N·m', 'millimetre', {
    kind: 'torque-wrench', quantity: 'torque', measures: ['torque'], resolution: 500, analogue: false,
    standardUncertainty: 700,
  }, anyReach, 45),
  gauge('MTB1', 'Beam wrench, N·m', 'millimetre', {
    kind: 'torque-wrench', quantity: 'torque', measures: ['turning-torque-crank', 'turning-torque-assembled'],
    resolution: 500, analogue: true, standardUncertainty: 200,
  }, anyReach, 45),
  gauge('MCP1', 'Crosshatch protractor, metric', 'millimetre', {
    kind: 'protractor', quantity: 'angle', measures: ['crosshatch'], resolution: 1_000, analogue: false, standardUncertainty: 600,
  }, anyReach, 210),
  gauge('MRT1', 'Roughness tester, metric', 'millimetre', {
    kind: 'roughness-tester', quantity: 'roughness', measures: ['roughness'], resolution: 10, analogue: false,
    standardUncertainty: 12,
  }, anyReach, 150),
  gauge('MSC1', 'Scales to 5 kg, with rod hanger', 'millimetre', {
    kind: 'scales', quantity: 'mass', measures: weighed, resolution: 100, analogue: false, standardUncertainty: 80,
  }, anyReach, 110),
  gauge('MBM1', 'Balancing machine, g·mm', 'millimetre', {
    kind: 'balancing-machine', quantity: 'unbalance', measures: ['unbalance'], resolution: 1_000, analogue: false,
    standardUncertainty: 7_000,
  }, anyReach, 180),
  gauge('MSP1', 'Spring tester, N', 'millimetre', {
    kind: 'spring-tester', quantity: 'force', measures: ['spring-load'], resolution: 1_000, analogue: false,
    standardUncertainty: 2_000,
  }, anyReach, 120),
]

/** The gauge with that mark. */
export function gaugeOf(mark: string): DemoGauge {
  const known = gauges.find((one) => one.mark === mark)
  if (known === undefined) throw new Error(`There is no gauge ${mark}.`)
  return known
}
