import { starterPlausibilityNumbers, type PlausibilityNumbers } from './numbers.ts'

/**
 * The shop's own numbers of plausibility, by the path of each: `neighbour.bore.finished`, `range.end-play.low`. Only those
 * that differ from the starter's are named, so that a shop which changed nothing carries nothing.
 */
export type ShopNumbers = Readonly<Record<string, number>>

/** The starter's numbers with the shop's own in their places. */
export function numbersWith(own: ShopNumbers): PlausibilityNumbers {
  return Object.entries(own).reduce<unknown>(
    (numbers, [key, value]) => replaced(numbers, key.split('.'), value), starterPlausibilityNumbers,
  ) as PlausibilityNumbers
}

function replaced(part: unknown, [step, ...rest]: readonly string[], value: number): unknown {
  if (step === undefined) return value
  if (Array.isArray(part)) return part.with(endOfBand(step), value)
  const known = part as Readonly<Record<string, unknown>>
  return { ...known, [step]: replaced(known[step], rest, value) }
}

/** The number at a path. */
export function numberAt(numbers: PlausibilityNumbers, key: string): number {
  return key.split('.').reduce<unknown>((part, step) => (
    Array.isArray(part) ? part[endOfBand(step)] as unknown : (part as Readonly<Record<string, unknown>>)[step]
  ), numbers) as number
}

function endOfBand(step: string): number {
  return step === 'low' ? 0 : 1
}
