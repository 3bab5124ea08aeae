import type { Duty, Limits } from '../../../packages/domain/src/index.ts'
import { middled, type OwnFit } from './own-arithmetic.ts'

type Numbers = (key: string) => number

/** Boost, nitrous and sustained load. */
export const isHot = (duty: Duty) => ['mild-boost', 'hard-boost', 'nitrous', 'sustained'].includes(duty)

/** Only a greatest, with what is better as target and as advice: never over the greatest itself. */
export function greatest(number: Numbers, high: string): Partial<Limits> {
  const better = number('target') > number(high) ? number(high) : number('target')
  return { high: number(high), target: better, adviceHigh: better }
}

export const threeFixed = (number: Numbers): Partial<Limits> => ({
  low: number('low'), high: number('high'), target: number('target'),
})

/** What only a maker can say. */
export const makersOnly: OwnFit = { formula: 'as the maker’s sheet says', named: () => [], limits: () => 'sheet' }

const fixedClearance: OwnFit = {
  formula: 'hole − shaft, between fixed limits',
  named: () => ['rule'],
  limits: (_, number) => middled(number('low'), number('high')),
}

/** In the block of pushrods only. */
const inBlock = (own: OwnFit): OwnFit => ({
  ...own, limits: (input, number) => (input.engine.valveTrain?.camshaft === 'overhead' ? 'none' : own.limits(input, number)),
})

/** Two limits that both move up by the rule’s allowance where it is hot. */
const hotter = (formula: string): OwnFit => ({
  formula,
  named: () => ['rule', 'duty'],
  limits({ duty }, number) {
    const more = isHot(duty) ? number('hot') : 0
    return middled(number('low') + more, number('high') + more)
  },
})

const width = 'the seat’s width, between the limits for this duty'
const rim = 'the rim left above the face, at least the limit for this duty'

const seatRunOut: OwnFit = {
  formula: 'the greatest reading, at most the limit', named: () => ['rule'], limits: (_, number) => greatest(number, 'high'),
}

/** Whatever lies under one head: with two banks half of the cylinders. */
const face: OwnFit = {
  formula: 'the greatest reading, at most the limit',
  named: () => ['rule', 'duty'],
  limits({ engine, duty }, number) {
    const pressed = duty === 'mild-boost' || duty === 'hard-boost' || duty === 'nitrous'
    const under = engine.firstBank === null ? engine.cylinders : engine.cylinders / 2
    return greatest(number, pressed ? 'boosted' : under >= 5 ? 'long' : 'high')
  },
}

const press = (ordered: 'newGuides' | 'newSeats'): OwnFit => ({
  formula: 'hole − body, negative by the interference for this material',
  named: () => ['rule', 'head material'],
  limits({ engine, options }, number) {
    if (options[ordered] !== true) return 'none'
    const material = engine.head?.material
    return material === undefined ? 'sheet' : middled(-number(`${material}-greatest`), -number(`${material}-least`))
  },
})

const room = (formula: string, advised: boolean): OwnFit => ({
  formula,
  named: () => ['rule'],
  limits: (_, number) => ({ low: number('low'), ...(advised ? { adviceHigh: number('usual-high') } : {}) }),
})

const coilBind = room('installed height − lift − height of the closed spring, at least the limit; much more lets it surge', true)
const toSeal = room('retainer to seal or guide, less the lift, at least the limit', false)
const radial = room('valve head to the edge of its relief, at least the limit', false)
const axial: OwnFit = {
  formula: 'the least room within 20° of top centre on overlap, at least the limit; more with aluminium rods',
  named: () => ['rule', 'rod material'],
  limits: ({ parts }, number) => ({ low: number('low') + (parts.rod.material === 'aluminium' ? number('aluminium') : 0) }),
}

/** Springs are matched where their card has them measured, and where there is more than one. */
const springMatch = (kind: 'intake' | 'exhaust'): OwnFit => ({
  formula: 'strongest of the set − load, at most the spread allowed',
  named: () => ['rule'],
  limits({ engine, sheets }, number) {
    const count = engine.cylinders * (engine.valveTrain?.[`${kind}Valves`] ?? 1)
    return count > 1 && sheets.some(({ fit }) => fit === `${kind}-spring-load`) ? { high: number('spread'), target: 0 } : 'none'
  },
})

/** Every fit of heads and valve train, worked out here from the words of its formula. */
export const topEndFits: Readonly<Record<string, OwnFit>> = {
  'head-bolt-stretch': makersOnly,
  'head-bolt-torque': makersOnly,
  'head-bolt-angle': makersOnly,
  'intake-stem-in-guide': fixedClearance,
  'exhaust-stem-in-guide': hotter('hole − shaft, between the limits for this duty'),
  'cam-bearing': inBlock(fixedClearance),
  'lifter-in-bore': inBlock(fixedClearance),
  'intake-seat-run-out': seatRunOut,
  'exhaust-seat-run-out': seatRunOut,
  'head-flatness': face,
  'deck-flatness': face,
  'intake-guide-in-head': press('newGuides'),
  'exhaust-guide-in-head': press('newGuides'),
  'intake-seat-in-head': press('newSeats'),
  'exhaust-seat-in-head': press('newSeats'),
  'intake-seat-width': { formula: width, named: () => ['rule'], limits: (_, number) => middled(number('low'), number('high')) },
  'exhaust-seat-width': hotter(width),
  'intake-valve-margin': { formula: rim, named: () => ['rule'], limits: (_, number) => ({ low: number('low') }) },
  'exhaust-valve-margin': {
    formula: rim,
    named: () => ['rule', 'duty'],
    limits: ({ duty }, number) => ({ low: number('low') + (isHot(duty) ? number('hot') : 0) }),
  },
  'intake-coil-bind': coilBind,
  'exhaust-coil-bind': coilBind,
  'intake-retainer-to-seal': toSeal,
  'exhaust-retainer-to-seal': toSeal,
  'intake-valve-to-piston-axial': axial,
  'exhaust-valve-to-piston-axial': axial,
  'intake-valve-to-piston-radial': radial,
  'exhaust-valve-to-piston-radial': radial,
  'intake-installed-height': makersOnly,
  'exhaust-installed-height': makersOnly,
  'intake-spring-load': makersOnly,
  'exhaust-spring-load': makersOnly,
  'intake-spring-match': springMatch('intake'),
  'exhaust-spring-match': springMatch('exhaust'),
  'cam-centreline': makersOnly,
  'intake-lash': makersOnly,
  'exhaust-lash': makersOnly,
  'leak-down': {
    formula: 'pressure lost of a feed of 100 psi at top centre, at most the limit',
    named: () => ['rule'],
    limits: (_, number) => ({ high: number('high'), adviceHigh: number('usual-high') }),
  },
}
