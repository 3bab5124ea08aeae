import type { Quantity } from '../features/feature.ts'
import type { Ratio } from './number-text.ts'

/** Quantities that are not lengths. Base units: mN·m, thousandths of a degree, mg, Pa, nm, mg·mm, mN. */
export type OtherQuantity = Exclude<Quantity, 'length'>

/** A unit: its symbol, and how many base units it holds as an exact ratio. */
export interface QuantityUnit {
  readonly quantity: OtherQuantity
  readonly symbol: string
  readonly perUnit: Ratio
  /** Other spellings that are read. */
  readonly spellings: readonly string[]
}

/** Pound-force in newtons, exact: 0.453 592 37 kg × 9.806 65 m/s² (avoirdupois pound, standard gravity). */
const poundForce: Ratio = { numerator: 45_359_237n * 980_665n, denominator: 10n ** 13n }

function unit(
  quantity: OtherQuantity, symbol: string, numerator: bigint, denominator: bigint, spellings: readonly string[] = [],
): QuantityUnit {
  return { quantity, symbol, perUnit: { numerator, denominator }, spellings }
}

/**
 * Every unit that is read and shown, by our own key.
 * @formula pound-force
 */
export const quantityUnits = {
  newtonMetre: unit('torque', 'N·m', 1_000n, 1n, ['nm', 'n m', 'n·m', 'n.m']),
  // 0.3048 m to the foot, 0.0254 m to the inch; a thousand base units to the newton metre
  poundForceFoot: unit(
    'torque', 'lbf·ft', poundForce.numerator * 3_048n * 1_000n, poundForce.denominator * 10_000n,
    ['lbf ft', 'lbft', 'lb ft', 'lb-ft', 'ft-lb', 'ft lb', 'ftlb'],
  ),
  poundForceInch: unit(
    'torque', 'lbf·in', poundForce.numerator * 254n * 1_000n, poundForce.denominator * 10_000n,
    ['lbf in', 'lbin', 'lb in', 'lb-in', 'in-lb', 'in lb', 'inlb'],
  ),
  degree: unit('angle', '°', 1_000n, 1n, ['deg', 'degree', 'degrees']),
  gram: unit('mass', 'g', 1_000n, 1n, ['gram', 'grams']),
  kilogram: unit('mass', 'kg', 1_000_000n, 1n),
  ounce: unit('mass', 'oz', 28_349_523_125n, 1_000_000n),
  pound: unit('mass', 'lb', 45_359_237n, 100n, ['lbs', 'pound', 'pounds']),
  gramMillimetre: unit('unbalance', 'g·mm', 1_000n, 1n, ['gmm', 'g mm', 'g*mm', 'g.mm', 'g-mm']),
  gramInch: unit('unbalance', 'g·in', 25_400n, 1n, ['gin', 'g in', 'g*in', 'g.in', 'g-in']),
  // a sixteenth of a pound, and 25.4 mm
  ounceInch: unit(
    'unbalance', 'oz·in', 28_349_523_125n * 254n, 10_000_000n, ['ozin', 'oz in', 'oz*in', 'oz.in', 'oz-in'],
  ),
  newton: unit('force', 'N', 1_000n, 1n, ['newton', 'newtons']),
  poundForce: unit('force', 'lbf', poundForce.numerator * 1_000n, poundForce.denominator, ['lb', 'lbs', 'pounds']),
  kilopascal: unit('pressure', 'kPa', 1_000n, 1n),
  bar: unit('pressure', 'bar', 100_000n, 1n),
  micrometre: unit('roughness', 'µm', 1_000n, 1n, ['μm', 'um', 'micron', 'microns']),
  // a millionth of 25.4 mm
  microinch: unit('roughness', 'µin', 254n, 10n, ['μin', 'uin', 'microinch', 'microinches']),
  // pounds-force on a square inch of 0.0254² m²
  poundPerSquareInch: unit('pressure', 'psi', poundForce.numerator * 10n ** 8n, poundForce.denominator * 64_516n),
} as const satisfies Record<string, QuantityUnit>

export type QuantityUnitName = keyof typeof quantityUnits
