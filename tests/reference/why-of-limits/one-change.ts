import {
  duties, nanometresOf, pistonAlloys, starterRules, type Nanometres, type PlanInput, type RuleRevision, type SheetLimit,
} from '../../../packages/domain/src/index.ts'
import { numbersOf, type Named } from './own-arithmetic.ts'

/** A plan's input with one thing changed, and what follows from it at once so that the engine can still exist. */
export interface OneChange {
  readonly named: Named
  readonly words: string
  readonly input: PlanInput
}

/** 0.010 in: an oversize, a regrind, a cut. */
const TEN_THOUSANDTHS = 254_000
const more = (length: Nanometres) => nanometresOf(length + TEN_THOUSANDTHS)

/** A change of duty, bore, alloy, work or any figure of the engine, each alone. */
export function changesOfEngine(input: PlanInput): readonly OneChange[] {
  const { engine, parts, options } = input
  const { mains, rodJournals } = engine
  const { piston, rod } = parts
  const change = (named: Named, changed: Partial<PlanInput>, words: string = named): OneChange => (
    { named, words, input: { ...input, ...changed } }
  )
  const family = (named: Named, key: 'mains' | 'rodJournals', changed: Partial<typeof mains>) =>
    change(named, { engine: { ...engine, [key]: { ...engine[key], ...changed } } })
  return [
    ...duties.filter((duty) => duty !== input.duty).map((duty) => change('duty', { duty }, duty)),
    ...pistonAlloys.filter((alloy) => alloy !== piston.alloy)
      .map((alloy) => change('alloy', { parts: { ...parts, piston: { ...piston, alloy } } }, alloy)),
    ...(['grind', 'polish', 'none'] as const).filter((crank) => crank !== options.crank)
      .map((crank) => change('crank work', { options: { ...options, crank } }, crank)),
    change('bore', { engine: { ...engine, bore: more(engine.bore) } }),
    change('stroke', { engine: { ...engine, stroke: more(engine.stroke) } }),
    change('deck height', { engine: { ...engine, deckHeight: more(engine.deckHeight) } }),
    change('rod length', { parts: { ...parts, rod: { ...rod, length: more(rod.length) } } }),
    change('rod material', { parts: { ...parts, rod: { ...rod, material: rod.material === 'steel' ? 'aluminium' : 'steel' } } }),
    change('compression height', {
      parts: { ...parts, piston: { ...piston, compressionHeight: more(piston.compressionHeight) } },
    }),
    change('gasket', { parts: { ...parts, gasketThickness: nanometresOf(4 * TEN_THOUSANDTHS) } }),
    change('pin fit', { parts: { ...parts, pin: { ...parts.pin, fit: parts.pin.fit === 'floating' ? 'pressed' : 'floating' } } }),
    family('main journal', 'mains', { diameter: more(mains.diameter) }),
    family('rod journal', 'rodJournals', { diameter: more(rodJournals.diameter) }),
    family('main housing', 'mains', { housing: more(mains.housing) }),
    family('rod housing', 'rodJournals', { housing: more(rodJournals.housing) }),
    family('mains', 'mains', { count: mains.count === 2 ? 3 : mains.count - 1 }),
    change('head material', {
      engine: { ...engine, head: { ...engine.head, material: engine.head?.material === 'iron' ? 'aluminium' : 'iron' } },
    }),
    change('greatest speed', { engine: { ...engine, greatestSpeed: (engine.greatestSpeed ?? 0) > 7_500 ? 6_000 : 9_000 } }),
    change('crank weight', { engine: { ...engine, crank: { ...engine.crank, mass: (engine.crank?.mass ?? 20_000_000) + 1_000_000 } } }),
    change('chamber', { engine: { ...engine, head: { ...engine.head, chamber: engine.head?.chamber === 'open' ? 'closed' : 'open' } } }),
    change('crown', { parts: { ...parts, piston: { ...piston, crown: piston.crown === 'dished' ? 'flat' : 'dished' } } }),
    change('ignition', { engine: { ...engine, ignition: engine.ignition === 'diesel' ? 'spark' : 'diesel' } }),
    change('bore surface', { engine: { ...engine, boreSurface: engine.boreSurface === 'plated' ? 'plain' : 'plated' } }),
    change('cycle', { engine: { ...engine, cycle: engine.cycle === 'two-stroke' ? 'four-stroke' : 'two-stroke' } }),
    change('cylinders', { engine: anotherCylinderCount(engine) }),
    ...(engine.firstBank === null ? [] : [change('rods on a pin', { engine: otherSharing(engine) })]),
  ]
}

/** Two cylinders fewer, or a second one beside a single: journals follow. */
function anotherCylinderCount(engine: PlanInput['engine']): PlanInput['engine'] {
  const cylinders = engine.cylinders === 1 ? 2 : engine.cylinders - 2
  const count = engine.rodJournals.count * cylinders / engine.cylinders
  return {
    ...engine,
    arrangement: engine.arrangement === 'single' ? 'inline' : engine.arrangement,
    cylinders,
    rodJournals: { ...engine.rodJournals, count },
    mains: { ...engine.mains, count: Math.min(engine.mains.count, count + 1) },
  }
}

/** Two rods on a pin become one, or one two: a pin is as wide as its rods need. */
function otherSharing(engine: PlanInput['engine']): PlanInput['engine'] {
  const { rodJournals, cylinders } = engine
  const isTwo = engine.pinSharing === 'two-plain-rods'
  return {
    ...engine,
    pinSharing: isTwo ? 'split-pin' : 'two-plain-rods',
    rodJournals: {
      ...rodJournals,
      count: isTwo ? cylinders : cylinders / 2,
      width: isTwo ? rodJournals.width : nanometresOf(2 * rodJournals.width),
    },
    mains: { ...engine.mains, count: Math.min(engine.mains.count, cylinders / 2 + 1) },
  }
}

/** 0.0001 in, and steps about as small in the other units. */
const steps = {
  length: 2_540, 'per-diameter': 60, percent: 5, torque: 100, angle: 500, roughness: 10, pressure: 100, mass: 100, force: 1_000,
  grade: 500, guard: 0,
}

/**
 * The shop revises its rules: in each of these plans one number of every rule is changed, so that each fit sees one
 * change (no fit reads another's rule).
 */
export function changesOfRules(input: PlanInput): readonly OneChange[] {
  const rounds = Math.max(...starterRules().map(({ fit }) => numbersOf(fit).length))
  return Array.from({ length: rounds }, (_, round) => ({
    named: 'rule', words: `number ${round + 1}`, input: { ...input, rules: starterRules().map(({ fit }) => revised(fit, round, input)) },
  }))
}

function revised(fit: string, round: number, { rules }: PlanInput): RuleRevision {
  const known = rules.find((rule) => rule.fit === fit)
  const number = numbersOf(fit)[round]
  const changed = number === undefined ? {} : { [number.key]: (known?.parameters[number.key] ?? number.value) + steps[number.unit] }
  return {
    fit, revision: (known?.revision ?? 0) + 1, parameters: { ...known?.parameters, ...changed }, source: 'changed for this test',
  }
}

/** The makers send another sheet for every fit, or the first. */
export function changeOfSheets(input: PlanInput): OneChange {
  const sheets = starterRules().map(({ fit }): SheetLimit => {
    const known = input.sheets.find((sheet) => sheet.fit === fit)
    const up = (limit: number | null | undefined) => (limit ?? 1_000_000) + 1_270
    const { low, high, target } = known?.limits ?? {}
    const limits = { low: up(low), high: up(high), target: up(target), adviceLow: null, adviceHigh: null }
    return { fit, level: known?.level ?? 'part-maker', limits, source: 'changed for this test' }
  })
  return { named: 'sheet', words: 'every sheet', input: { ...input, sheets } }
}
