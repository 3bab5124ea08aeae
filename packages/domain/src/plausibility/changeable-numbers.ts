import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE } from '../exact/length.ts'

/**
 * Units of the numbers that a shop sets: `length` whole nanometres; `per-diameter` millionths of the bore; `percent`;
 * `degrees` thousandths of a °C; `mass` milligrams; `count`; `times` a plain factor.
 */
export const plausibilityUnits = ['length', 'per-diameter', 'percent', 'degrees', 'mass', 'count', 'times'] as const
export type PlausibilityUnit = (typeof plausibilityUnits)[number]

/** A number that the shop may set, by its path in the numbers, and between which bounds it makes sense. */
export interface ChangeableNumber {
  readonly key: string
  readonly title: string
  readonly unit: PlausibilityUnit
  readonly least: number
  readonly most: number
}

/** Numbers of one rule, and what that rule asks or blocks. */
export interface NumberGroup {
  readonly key: string
  readonly title: string
  readonly words: string
  readonly numbers: readonly ChangeableNumber[]
}

// Between these bounds a rule still asks something and does not ask always: our choice, no source.
const mil = NANOMETRES_PER_INCH / 1_000
const micron = NANOMETRES_PER_MILLIMETRE / 1_000

const length = (key: string, title: string, most: number, least = micron): ChangeableNumber => (
  { key, title, unit: 'length', least, most }
)
const band = (key: string, title: string, [least, most]: readonly [number, number], unit: PlausibilityUnit = 'length'): ChangeableNumber[] => [
  { key: `${key}.low`, title: `${title}, from`, unit, least, most },
  { key: `${key}.high`, title: `${title}, to`, unit, least, most },
]

/**
 * Every number of plausibility that a shop may set, by what is asked or blocked by it. Not among them: what is arithmetic
 * (inches for millimetres, the decimal point, one turn of a thimble), the oversizes that rings are made in, and one key
 * that fills two cells.
 */
export const changeableNumbers: readonly NumberGroup[] = [
  {
    key: 'neighbour', title: 'Beside its neighbours',
    words: 'Asks when a value lies farther than this from the middle of the others of the same bore, journal or pin; for its first value, of those beside it. Wear is real on a part as it came in.',
    numbers: [
      length('neighbour.bore.intake', 'Bore, as it came in', 50 * mil),
      length('neighbour.bore.finished', 'Bore, after the work', 50 * mil),
      length('neighbour.journal.intake', 'Journal, as it came in', 20 * mil),
      length('neighbour.journal.finished', 'Journal, after the work', 20 * mil),
      length('neighbour.pin.intake', 'Pin, as it came in', 10 * mil),
      length('neighbour.pin.finished', 'Pin, after the work', 10 * mil),
      length('neighbour.bushing.intake', 'Bushing or pin bore, as it came in', 10 * mil),
      length('neighbour.bushing.finished', 'Bushing or pin bore, after the work', 10 * mil),
    ],
  },
  {
    key: 'nominal', title: 'A bore and its nominal size',
    words: 'Asks, or blocks, when a bore lies farther than this from its nominal size and from every usual oversize.',
    numbers: [
      length('nominal.intake', 'Asks, as it came in', 100 * mil),
      length('nominal.finished', 'Asks, after the work', 100 * mil),
      length('nominal.block', 'Blocks', 500 * mil),
    ],
  },
  {
    key: 'growth', title: 'Metal only comes off',
    words: 'Asks when a bore is smaller, or a journal or pin larger, than before the cut by more than this, and when a piston is larger than its drawing. Of a coated part nothing is asked.',
    numbers: [
      length('growth.afterCut', 'Against the pass before', 10 * mil),
      length('growth.overBlueprint', 'Piston over its drawing', 50 * mil),
    ],
  },
  {
    key: 'sign', title: 'Plus or minus',
    words: 'Asks whether plus was typed for minus: by the other sign the value would lie within the first figure of its neighbours, and as typed it lies at least the second from them.',
    numbers: [
      length('sign.flippedWithin', 'By the other sign within', 5 * mil),
      length('sign.typedOff', 'As typed at least', 20 * mil),
    ],
  },
  {
    key: 'range', title: 'Usual clearances, gaps and stretch',
    words: 'Asks when a value lies outside these. The limits of the fit sheet are judged apart from this.',
    numbers: [
      ...band('ringGapPerBore', 'Ring gap', [0, 50_000], 'per-diameter'),
      ...band('range.ring-side-clearance', 'Ring side clearance', [0, 30 * mil]),
      ...band('range.oil-clearance', 'Oil clearance', [0, 30 * mil]),
      ...band('range.end-play', 'Crankshaft end play', [0, 100 * mil]),
      ...band('range.rod-side-clearance', 'Rod side clearance', [0, 200 * mil]),
      ...band('range.bolt-stretch', 'Rod bolt stretch', [0, 50 * mil]),
      ...band('range.deck-clearance', 'Deck clearance', [-500 * mil, 500 * mil]),
    ],
  },
  {
    key: 'set', title: 'A whole set',
    words: 'Asks about the zero when the middle of a set has moved by more than this while nothing was machined; and whether it was copied when its values are too much alike.',
    numbers: [
      length('set.offset', 'Moved', 10 * mil),
      length('set.equalWithin', 'Alike: all within less than', 5 * mil),
      { key: 'set.equalFrom', title: 'Alike: from how many values', unit: 'count', least: 3, most: 100 },
      { key: 'set.run', title: 'Alike: one figure in a row', unit: 'count', least: 3, most: 100 },
    ],
  },
  {
    key: 'agreement', title: 'A second person',
    words: 'Asks for a third reading when two people differ by more than this many times their joint uncertainty, and nothing was machined between. All readings are kept.',
    numbers: [{ key: 'agreement', title: 'Times the joint U', unit: 'times', least: 0.5, most: 10 }],
  },
  {
    key: 'temperature', title: 'Temperature',
    words: 'Asks at the first value of a pass when the part is colder or warmer than this, is not as warm as the gauge, or would be read wrong by a good part of its tolerance and is not corrected to 20 °C.',
    numbers: [
      ...band('temperature.part', 'Part', [-10_000, 60_000], 'degrees'),
      { key: 'temperature.difference', title: 'Between part and gauge', unit: 'degrees', least: 100, most: 20_000 },
      { key: 'temperature.tolerancePercent', title: 'Of the tolerance', unit: 'percent', least: 1, most: 100 },
    ],
  },
  {
    key: 'weight', title: 'The weight of a piston',
    words: 'Asks when a piston is lighter or heavier than this: grams are what the scales show.',
    numbers: band('pistonMass', 'Piston', [10_000, 10_000_000], 'mass'),
  },
  {
    key: 'zero', title: 'The zero of a gauge',
    words: 'Does not ask: a gauge that shows more than this when it is put back on its setting has drifted, and what it read since its last good zero is void. One that cannot show as little may be off by one step that it can show.',
    numbers: [length('zeroDrift', 'Drift', 5 * mil)],
  },
]
