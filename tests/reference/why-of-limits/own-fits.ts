import type { Duty, PartsSpecification, PlanInput } from '../../../packages/domain/src/index.ts'
import { half, middled, share, type OwnFit } from './own-arithmetic.ts'
import { greatest, isHot, makersOnly, threeFixed, topEndFits } from './own-top-end.ts'

const boosted = (duty: Duty) => duty === 'mild-boost' || duty === 'hard-boost'

const isForged = ({ piston }: PartsSpecification) => piston.alloy === '4032' || piston.alloy === '2618'

const gapNumber: Readonly<Record<Duty, string>> = {
  street: 'street', restoration: 'street', 'mild-boost': 'moderate', towing: 'moderate', sustained: 'sustained',
  'hard-boost': 'hard', nitrous: 'hard',
}

/** Limits that are numbers of the rule and hang on nothing else. */
const fixed = (formula: string): OwnFit => ({
  formula, named: () => ['rule'], limits: (_, number) => middled(number('low'), number('high')),
})

const formWords = {
  'out-of-round': 'largest difference between axes at one station (two-point; an odd number of lobes stays unseen)',
  taper: 'largest difference between stations on one axis',
}

const form = (words: keyof typeof formWords): OwnFit => ({
  formula: formWords[words],
  named: () => ['rule'],
  limits: (_, number) => ({ high: number('high'), target: number('target'), adviceHigh: number('target') }),
})

const journalForm = (words: keyof typeof formWords): OwnFit => ({
  formula: formWords[words],
  named: ({ work }) => (work === 'balancing' ? ['rule'] : ['rule', 'crank work']),
  limits({ options, work }, number) {
    // A crank sent in for grinding is ground whatever else was ordered, unless it is polished; one to be balanced is neither.
    const ground = work !== 'balancing' && (options.crank === 'grind' || (work === 'crank-regrind' && options.crank === 'none'))
    return { high: number(ground ? 'ground-high' : 'reuse-high'), target: number('target'), adviceHigh: number('target') }
  },
})

const housing = (family: 'mains' | 'rodJournals', named: 'main housing' | 'rod housing'): OwnFit => ({
  formula: 'nominal housing − and + the tolerance, at every point',
  named: () => ['rule', named],
  limits({ engine }, number) {
    const { housing: nominal } = engine[family]
    return { low: nominal - number('tolerance'), high: nominal + number('tolerance'), target: nominal }
  },
})

const bearing = (family: 'mains' | 'rodJournals', named: 'main journal' | 'rod journal'): OwnFit => ({
  formula:
    'journal diameter × clearance per unit of diameter; the upper half when boosted or sustained; never under the floor',
  named: () => ['rule', 'duty', named],
  limits({ engine, duty }, number) {
    const { diameter } = engine[family]
    const least = share(diameter, number('low'))
    const most = share(diameter, number('high'))
    const start = boosted(duty) || duty === 'sustained' ? half(least + most) : least
    const low = start < number('floor') ? number('floor') : start
    const high = most + number('high-allowance')
    return low < high ? middled(low, high) : 'sheet'
  },
})

/** Each part against the lightest of its set; a single has nothing to match. */
const matchedWeight: OwnFit = {
  formula: 'weight − lightest of the set, at most the spread allowed',
  named: () => ['rule'],
  limits: ({ engine }, number) => (engine.cylinders === 1 ? 'none' : { high: number('spread'), target: 0 }),
}

const STACK = 'deck height − (stroke ÷ 2 + rod length + compression height)'

/** What quench is not for, of what this engine is. */
const noQuench = ({ engine, parts }: PlanInput): readonly string[] => [
  ...(parts.piston.crown === 'dished' ? ['dished pistons'] : []),
  ...(engine.ignition === 'diesel' ? ['diesels'] : []),
  ...(engine.head?.chamber === 'open' ? ['open chambers'] : []),
]

const endGap: OwnFit = {
  formula: 'bore diameter × gap per unit of diameter for the duty; no high limit, only advice',
  named: () => ['rule', 'duty', 'bore'],
  limits({ engine, parts, duty }, number) {
    if (parts.piston.alloy === 'hypereutectic') return 'sheet'
    const low = share(engine.bore, number(gapNumber[duty]))
    return { low, target: low + number('aim'), adviceHigh: low + number('wide') }
  },
}

const endPlay: OwnFit = {
  formula: 'the crank pushed fully each way, between fixed limits',
  named: () => ['rule'],
  limits: ({ engine }, number) => (engine.mains.diameter > number('largest-main') ? 'sheet' : {
    low: number('low'), high: number('high'), target: number('target'),
    adviceLow: number('usual-low'), adviceHigh: number('usual-high'),
  }),
}

const finish: OwnFit = {
  formula: 'between the limits for rings in general; the rings’ own sheet asks for less room',
  named: () => ['rule'],
  limits: (_, number) => ({ low: number('low'), high: number('high'), target: number('target') }),
}
const bolt = makersOnly
const sideClearance = fixed('groove width − ring width, between the limits for new pistons')
const belowLand = fixed('land less ring face with the ring pressed home; never proud')

/** Every fit, worked out here from the words of its formula. */
export const ownFits: Readonly<Record<string, OwnFit>> = {
  'piston-in-bore': {
    formula: 'bore diameter × clearance per unit of diameter for the alloy × duty factor; bore less piston at its gauge point',
    named: () => ['rule', 'duty', 'bore', 'alloy', 'bore surface', 'cycle'],
    limits({ engine, parts, duty }, number) {
      if (engine.cooling === 'air' || engine.boreSurface === 'plated' || engine.cycle === 'two-stroke') return 'sheet'
      const more = (side: string) => (boosted(duty) ? number('boost') : duty === 'sustained' ? number(`sustained-${side}`) : 0)
      const limit = (side: string) => share(engine.bore, number(`${parts.piston.alloy}-${side}`), 100 + more(side))
      return middled(limit('low'), limit('high'))
    },
  },
  'bore-out-of-round': form('out-of-round'),
  'bore-taper': form('taper'),
  'bore-crosshatch': finish,
  'bore-roughness': finish,
  'pin-in-rod': {
    formula: 'bushing − pin, between the limits for this duty',
    named: () => ['rule', 'duty'],
    limits({ parts, duty }, number) {
      if (parts.pin.fit === 'pressed') return 'none'
      const of = (key: string) => number(boosted(duty) ? `boosted-${key}` : key)
      return { low: of('low'), high: of('high'), target: of('target') }
    },
  },
  'pressed-pin-in-rod': {
    formula: 'small end − pin, negative by the interference',
    named: () => ['rule'],
    limits: ({ parts }, number) => (parts.pin.fit === 'floating' ? 'none' : {
      low: -number('greatest'), high: -number('least'), target: -number('target'),
      adviceLow: -number('usual-greatest'), adviceHigh: -number('usual-least'),
    }),
  },
  'pin-in-piston': {
    formula: 'pin bore − pin, between the limits for this piston, pin fit and duty',
    named: ({ parts }) => [
      'rule', 'pin fit', ...(parts.pin.fit === 'floating' ? ['alloy' as const] : []),
      ...(parts.pin.fit === 'floating' && isForged(parts) ? ['duty' as const] : []),
    ],
    limits({ parts, duty }, number) {
      if (parts.pin.fit === 'pressed') return middled(number('pressed-low'), number('pressed-high'))
      if (!isForged(parts)) return middled(number('low'), number('high'))
      const more = boosted(duty) ? number('boost') : 0
      return middled(number('forged-low') + more, number('forged-high') + more)
    },
  },
  'pin-end-play': {
    formula: 'outer flank to outer flank of the grooves − rings × thickness − pin length',
    named: () => ['rule'],
    limits({ parts }, number) {
      if (parts.pin.fit === 'pressed') return 'none'
      return parts.retainers === null ? 'sheet' : { low: number('low'), high: number('high') }
    },
  },
  'top-ring-end-gap': endGap,
  'second-ring-end-gap': endGap,
  'oil-rail-end-gap': {
    formula: 'the smaller of the two rails’ gaps, at least the limit',
    named: () => ['rule'],
    limits: (_, number) => ({ low: number('low'), target: number('low') }),
  },
  'top-ring-side-clearance': sideClearance,
  'second-ring-side-clearance': sideClearance,
  'oil-ring-side-clearance': {
    ...sideClearance,
    limits(input, number) {
      // the pin bore, its mouth included, reaches above the lower flank of the oil groove
      const { piston } = input.parts
      const groove = piston.grooves.find(({ ring }) => ring === 'oil')
      const mouth = piston.pinBoreMouth ?? piston.pinBore
      const isBroken = groove !== undefined && 2 * (piston.compressionHeight - groove.upperFlank - groove.width) < mouth
      return isBroken ? sideClearance.limits(input, number) : 'none'
    },
  },
  'top-ring-back-clearance': belowLand,
  'second-ring-back-clearance': belowLand,
  'main-housing-size': housing('mains', 'main housing'),
  'main-housing-out-of-round': form('out-of-round'),
  'big-end-size': housing('rodJournals', 'rod housing'),
  'big-end-out-of-round': form('out-of-round'),
  'main-journal-out-of-round': journalForm('out-of-round'),
  'main-journal-taper': journalForm('taper'),
  'rod-journal-out-of-round': journalForm('out-of-round'),
  'rod-journal-taper': journalForm('taper'),
  'main-bearing': bearing('mains', 'main journal'),
  'rod-bearing': bearing('rodJournals', 'rod journal'),
  'rod-side-clearance': {
    formula: 'width between cheeks − rods on the pin, between the limits for their number and material',
    named: ({ engine }) => ['rule', 'rod material', ...(engine.firstBank === null ? [] : ['rods on a pin' as const])],
    limits({ engine, parts }, number) {
      if (engine.pinSharing === 'fork-and-blade') return 'sheet'
      if (engine.pinSharing === 'two-plain-rods') {
        return middled(number(`two-${parts.rod.material}-low`), number(`two-${parts.rod.material}-high`))
      }
      return parts.rod.material === 'steel' ? middled(number('one-rod-low'), number('one-rod-high')) : 'sheet'
    },
  },
  'crank-end-play': endPlay,
  'crank-end-play-final': endPlay,
  'piston-weight': matchedWeight,
  'pin-weight': matchedWeight,
  'big-end-weight': matchedWeight,
  'small-end-weight': matchedWeight,
  'crank-unbalance': {
    formula: 'crankshaft’s mass × 1000 × G ÷ (2π × greatest speed ÷ 60), half of it in each plane (ISO 21940-11)',
    named: () => ['rule', 'crank weight', 'greatest speed'],
    limits({ engine }, number) {
      if (engine.crank?.mass === undefined || engine.greatestSpeed === undefined) return 'sheet'
      // e = G/ω in mm, times the mass in mg: half of it in each of two planes
      const omega = engine.greatestSpeed * Math.PI / 30
      return { high: Math.floor(engine.crank.mass * number('grade') / 1_000 / omega / 2) }
    },
  },
  'deck-clearance': {
    formula(input) {
      const without = noQuench(input)
      if (without.length > 0) return `${STACK}; no least quench: it is not for ${without[0]}`
      return input.parts.gasketThickness === undefined
        ? `${STACK}; no limit while the gasket is not chosen`
        : `least quench − compressed gasket; expected: ${STACK}`
    },
    named: (input) => [
      'rule', 'stroke', 'deck height', 'rod length', 'compression height',
      ...(noQuench(input).length > 0 ? [] : ['gasket' as const]),
      ...(noQuench(input).length > 0 || input.parts.gasketThickness === undefined
        ? [] : ['rod material' as const, 'greatest speed' as const, 'chamber' as const, 'crown' as const, 'ignition' as const]),
    ],
    limits(input, number) {
      const { engine, parts } = input
      const stack = engine.deckHeight - half(engine.stroke) - parts.rod.length - parts.piston.compressionHeight
      const expected = { target: stack, adviceLow: stack - number('spread'), adviceHigh: stack + number('spread') }
      if (parts.gasketThickness === undefined || noQuench(input).length > 0) return expected
      const fast = (engine.greatestSpeed ?? 0) > 7_500 ? number('fast') : 0
      return { ...expected, low: number(parts.rod.material) + fast - parts.gasketThickness }
    },
  },
  'rod-bolt-stretch': bolt,
  'rod-bolt-torque': bolt,
  'main-bolt-torque': bolt,
  'rod-bolt-angle': bolt,
  'main-bolt-angle': bolt,
  'rod-bolt-set': {
    formula: 'free length released − free length before, at most the limit',
    named: () => ['rule'],
    limits: (_, number) => ({ high: number('scrap'), adviceHigh: number('look') }),
  },
  'crank-run-out': {
    formula: 'the greatest reading, at most the limit',
    named: () => ['rule', 'duty'],
    // Between two mains there is none.
    limits: ({ engine, duty }, number) => (engine.mains.count < 3 ? 'none' : greatest(number, isHot(duty) ? 'hot' : 'high')),
  },
  'cam-end-play': {
    formula: 'the reading, between fixed limits',
    named: () => ['rule'],
    limits: ({ engine }, number) => (engine.valveTrain?.camshaft === 'overhead' ? 'none' : threeFixed(number)),
  },
  'pick-up-to-pan': {
    formula: 'the reading, between fixed limits', named: () => ['rule'], limits: (_, number) => threeFixed(number),
  },
  ...topEndFits,
  'turning-torque-crank': {
    formula: 'main bearings × the shop’s greatest for each',
    named: () => ['rule', 'mains'],
    limits: ({ engine }, number) => ({ high: engine.mains.count * number('per-main') }),
  },
  'turning-torque-assembled': {
    formula: 'cylinders × the shop’s greatest for each',
    named: () => ['rule', 'cylinders'],
    limits: ({ engine }, number) => ({ high: engine.cylinders * number('per-cylinder') }),
  },
}
