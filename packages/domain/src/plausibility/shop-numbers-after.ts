import { DomainError } from '../errors.ts'
import { sayLength } from '../exact/format-length.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import { sayDegrees } from '../temperature/say-degrees.ts'
import { changeableNumbers, type ChangeableNumber, type NumberGroup, type PlausibilityUnit } from './changeable-numbers.ts'
import { starterPlausibilityNumbers } from './numbers.ts'
import { numberAt, numbersWith, type ShopNumbers } from './shop-numbers.ts'

/** A number that must not lie above another of its rule; a band whose ends meet would ask about everything. */
interface Order {
  readonly lower: string
  readonly upper: string
  readonly mayMeet: boolean
}

const orders: readonly Order[] = [
  ...changeableNumbers.flatMap(({ numbers }) => numbers).filter(({ key }) => key.endsWith('.low'))
    .map(({ key }) => ({ lower: key, upper: key.replace(/low$/, 'high'), mayMeet: false })),
  ...['bore', 'journal', 'pin', 'bushing']
    .map((kind) => ({ lower: `neighbour.${kind}.finished`, upper: `neighbour.${kind}.intake`, mayMeet: true })),
  { lower: 'nominal.finished', upper: 'nominal.intake', mayMeet: true },
  { lower: 'nominal.intake', upper: 'nominal.block', mayMeet: true },
  { lower: 'sign.flippedWithin', upper: 'sign.typedOff', mayMeet: false },
]

/**
 * The shop's own numbers after a change: what is back at the starter's number is no longer the shop's own.
 * @param changed the numbers that are changed now, by path: they are the ones to blame
 * @param unit in which the sentences name lengths
 * @throws DomainError `rule-unknown` for a number that is not the shop's to set, `value-out-of-range` for one that its rule
 *   cannot work with; the field is its path behind `numbers.`
 */
export function shopNumbersAfter(own: ShopNumbers, changed: ShopNumbers, unit: ReaderUnit): ShopNumbers {
  for (const [key, value] of Object.entries(changed)) requireInBounds(key, value, unit)
  const all = Object.entries({ ...own, ...changed })
  const next = Object.fromEntries(all.filter(([key, value]) => value !== numberAt(starterPlausibilityNumbers, key)))
  for (const order of orders) {
    if (order.lower in changed || order.upper in changed) requireOrder(order, next, order.lower in changed ? order.lower : order.upper, unit)
  }
  return next
}

/** A number of plausibility as it is said: “0.0030 in”, “2.0 °C”, “10 %”. */
export function sayNumber(value: number, unit: PlausibilityUnit, reader: ReaderUnit): string {
  switch (unit) {
    case 'length': return sayLength(value, reader)
    case 'per-diameter': return `${value / 1_000_000} of the bore`
    case 'percent': return `${value} %`
    case 'degrees': return sayDegrees(value)
    case 'mass': return `${value / 1_000} g`
    case 'count': case 'times': return String(value)
  }
}

function requireInBounds(key: string, value: number, reader: ReaderUnit): void {
  const [number, group] = changeable(key)
  const { title, unit, least, most } = number
  const isWhole = unit !== 'percent' && unit !== 'times'
  if (Number.isFinite(value) && (!isWhole || Number.isSafeInteger(value)) && value >= least && value <= most) return
  throw new DomainError(
    'value-out-of-range',
    `“${group.title}: ${title}” is a figure from ${sayNumber(least, unit, reader)} to ${sayNumber(most, unit, reader)}.`,
    `numbers.${key}`,
  )
}

function requireOrder({ lower, upper, mayMeet }: Order, own: ShopNumbers, blamed: string, reader: ReaderUnit): void {
  const numbers = numbersWith(own)
  const [low, high] = [numberAt(numbers, lower), numberAt(numbers, upper)]
  if (mayMeet ? low <= high : low < high) return
  const say = (key: string, value: number) => {
    const [{ title, unit }] = changeable(key)
    return `“${title}” (${sayNumber(value, unit, reader)})`
  }
  throw new DomainError(
    'value-out-of-range', `${say(lower, low)} must ${mayMeet ? 'not lie above' : 'lie below'} ${say(upper, high)}.`, `numbers.${blamed}`,
  )
}

/** @throws DomainError `rule-unknown` */
function changeable(key: string): readonly [ChangeableNumber, NumberGroup] {
  for (const group of changeableNumbers) {
    const number = group.numbers.find((one) => one.key === key)
    if (number !== undefined) return [number, group]
  }
  throw new DomainError('rule-unknown', `The shop sets no number “${key}”.`, `numbers.${key}`)
}
