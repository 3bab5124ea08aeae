import { sayLength } from '../exact/format-length.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import { median } from '../statistics/sample.ts'
import { ask, block, isIn, type Doubt } from './doubt.ts'
import type { PlausibilityNumbers } from './numbers.ts'
import type { ReadingContext } from './reading-context.ts'

/** Farther from its like than parts scatter. Measure again rather than reject: wear is real at intake. */
export function farFromNeighbours(
  { kind, stage, value, neighbours }: ReadingContext, numbers: PlausibilityNumbers, unit: ReaderUnit,
): Doubt | null {
  const allowed = numbers.neighbour[kind]?.[stage]
  if (allowed === undefined || neighbours.length === 0) return null
  const away = Math.abs(value - median(neighbours))
  if (away <= allowed) return null
  return ask('neighbour', `${sayLength(away, unit)} from the middle of its neighbours: measure it again.`)
}

/**
 * A bore that is neither nominal nor any oversize that rings are made for: nor one undersize, because a plan may name the
 * oversize that the bore has yet to be taken to.
 */
export function farFromNominal(
  { kind, stage, value, nominal }: ReadingContext, numbers: PlausibilityNumbers, unit: ReaderUnit,
): Doubt | null {
  if (kind !== 'bore' || nominal === null) return null
  const off = Math.abs(value - nominal)
  const away = Math.min(...numbers.oversizes.map((oversize) => Math.abs(off - oversize)))
  const sentence = `${sayLength(away, unit)} from the nominal size and from every usual oversize.`
  if (away > numbers.nominal.block) return block('nominal', sentence)
  return away > numbers.nominal[stage] ? ask('nominal', `${sentence} Is that so?`) : null
}

/**
 * Metal only comes off: a bore does not shrink under the hone, nor a journal grow under the polishing belt.
 */
export function growth(
  { kind, value, previous, nominal, isCoated }: ReadingContext, numbers: PlausibilityNumbers,
): Doubt | null {
  if (isCoated) return null
  const { afterCut, overBlueprint } = numbers.growth
  const isHole = kind === 'bore' || kind === 'housing' || kind === 'bushing'
  if (previous !== null && isHole && previous - value > afterCut) {
    return ask('growth', 'Smaller than before the cut: measured warm then, or set wrong now?')
  }
  const isShaft = kind === 'journal' || kind === 'pin'
  if (previous !== null && isShaft && value - previous > afterCut) {
    return ask('growth', 'Larger than before the cut: was it plated, or is the gauge set wrong?')
  }
  const hasBlueprint = kind === 'piston' || kind === 'shell-wall'
  if (nominal !== null && hasBlueprint && value - nominal > overBlueprint) {
    return ask('growth', 'Larger than its drawing: is it coated, or of another size?')
  }
  return null
}

/** A part that would not go in where it runs. */
export function closedPair({ value, mate }: ReadingContext): Doubt | null {
  if (mate === null) return null
  const clearance = mate.shape === 'shaft' ? value - mate.value : mate.value - value
  return clearance > 0 ? null : block('pair', 'This leaves no clearance at all: swapped, or set wrong?')
}

/** Outside what such a clearance, gap or stretch usually is. */
export function outOfRange(
  { kind, value, bore }: ReadingContext, numbers: PlausibilityNumbers, unit: ReaderUnit,
): Doubt | null {
  const [low, high] = kind === 'ring-gap' && bore !== null
    ? [(numbers.ringGapPerBore[0] * bore) / 1_000_000, (numbers.ringGapPerBore[1] * bore) / 1_000_000]
    : (numbers.range[kind] ?? [-Infinity, Infinity])
  if (isIn(value, [low, high])) return null
  return ask('range', `Usual are ${sayLength(low, unit)} to ${sayLength(high, unit)}: is this what was read?`)
}
