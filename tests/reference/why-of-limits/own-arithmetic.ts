import { starterRules, type Limits, type PlanInput } from '../../../packages/domain/src/index.ts'

/** What a why names: the inputs that its limits hang on. */
export type Named =
  | 'rule' | 'sheet' | 'duty' | 'bore' | 'alloy' | 'pin fit' | 'main journal' | 'rod journal' | 'main housing' | 'rod housing'
  | 'crank work' | 'rods on a pin' | 'rod material' | 'stroke' | 'deck height' | 'rod length' | 'compression height' | 'gasket' | 'mains' | 'cylinders' | 'head material'
  | 'greatest speed' | 'crank weight' | 'chamber' | 'crown' | 'ignition' | 'bore surface' | 'cycle'

/** `none` where the engine has no such fit, `sheet` where only a maker can say. */
export type Expected = Limits | 'none' | 'sheet'

/** A fit's numbers: the shop's revision over the starter's. Figures are data; no formula is taken from there. */
type Numbers = (key: string) => number

/** One fit as its why puts it in words, and the sums that those words ask for. */
export interface OwnFit {
  readonly formula: string | ((input: PlanInput) => string)
  /** The inputs that move its limits on this engine, wherever no sheet decides. */
  readonly named: (input: PlanInput) => readonly Named[]
  readonly limits: (input: PlanInput, number: Numbers) => Partial<Limits> | 'none' | 'sheet'
}

const starters = new Map(starterRules().map(({ fit, parameters }) => [fit, parameters]))

/** The numbers of a fit that a change of rule may touch: all but the guard, which moves no limit. */
export function numbersOf(fit: string) {
  return (starters.get(fit) ?? []).filter(({ unit }) => unit !== 'guard')
}

/** What the limits of a fit must be for this input, worked out here: a sheet first, else the sums of its words. */
export function expectedLimits(fit: string, own: OwnFit, input: PlanInput): Expected {
  const limits = own.limits(input, (key) => {
    const shop = input.rules.find((rule) => rule.fit === fit)?.parameters[key]
    const number = shop ?? starters.get(fit)?.find((parameter) => parameter.key === key)?.value
    if (number === undefined) throw new Error(`${fit} has no number ${key}`)
    return number
  })
  if (limits === 'none') return 'none'
  const sheet = input.sheets.find((known) => known.fit === fit)
  if (sheet !== undefined) return sheet.limits
  if (limits === 'sheet') return 'sheet'
  return { low: null, high: null, target: null, adviceLow: null, adviceHigh: null, ...limits }
}

/** numerator ÷ denominator to the nearest whole number, the even one at a half, in whole-number arithmetic. */
function nearest(numerator: bigint, denominator: bigint): number {
  const rest = ((numerator % denominator) + denominator) % denominator
  const below = (numerator - rest) / denominator
  const isAbove = 2n * rest > denominator || (2n * rest === denominator && below % 2n !== 0n)
  return Number(isAbove ? below + 1n : below)
}

/** Half of a sum of whole numbers. */
export const half = (sum: number) => nearest(BigInt(sum), 2n)

/** Two limits and the middle of them as target. */
export const middled = (low: number, high: number): Partial<Limits> => ({ low, high, target: half(low + high) })

/** A diameter times millionths of it times per cent, rounded once. */
export function share(diameter: number, millionths: number, percent = 100): number {
  return nearest(BigInt(diameter) * BigInt(millionths) * BigInt(percent), 100_000_000n)
}
