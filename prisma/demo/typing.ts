import {
  decimalsOf, formatLength, formatQuantity, parseLength, parseQuantity, quantityUnits, readerQuantityUnits, roundToStep, type Quantity,
} from '@tenths/domain'
import type { DemoGauge } from './gauges.ts'

/** A value as a person types it, and the whole number that the text means. */
export interface Typed {
  readonly typed: string
  readonly value: number
}

/** Decimals that a gauge of another quantity than length shows. */
function decimalsShown(quantity: Exclude<Quantity, 'length'>, unit: DemoGauge['unit']): number {
  return quantity === 'roughness' && unit === 'inch' ? 0 : decimalsOf(readerQuantityUnits[quantity][unit])
}

/**
 * The step in which a person reads a gauge where this much room is left: whole divisions of a dial, halves where whole
 * ones would tell too little; a display has no halves.
 */
export function readingStep(gauge: Pick<DemoGauge, 'analogue' | 'resolution'>, room: number): number {
  return gauge.analogue && room < 4 * gauge.resolution ? gauge.resolution / 2 : gauge.resolution
}

/**
 * Types what a gauge shows: inches bare, with four decimals or five where half a tenth shows, without the nought in
 * front for those who leave it out; millimetres and whatever is no length with their unit, because the shop's own unit is the inch.
 */
export function typeValue(
  quantity: Quantity, value: number, gauge: DemoGauge, habit: { readonly leadingNought: boolean },
): Typed {
  if (quantity !== 'length') {
    const unit = readerQuantityUnits[quantity][gauge.unit]
    const text = `${plain(formatQuantity(value, unit, decimalsShown(quantity, gauge.unit), 'half-even')).replace(/\.0$/, '')} ${quantityUnits[unit].symbol}`
    return { typed: text, value: parseQuantity(text, unit) }
  }
  if (gauge.unit === 'millimetre') {
    const step = value % 1_000 === 0 ? 1_000 : 100
    const text = `${plain(formatLength(value, { unit: 'millimetre', step }, 'half-even'))} mm`
    return { typed: text, value: parseLength(text, 'millimetre') }
  }
  const five = plain(formatLength(value, { unit: 'inch', step: 254 }, 'half-even'))
  const four = five.endsWith('0') ? five.slice(0, -1) : five
  const text = habit.leadingNought ? four : four.replace(/^(-?)0\./, '$1.')
  return { typed: text, value: parseLength(text, 'inch') }
}

/** To the nearest step that the gauge shows, but never out of the window that is left. */
export function roundInto(value: number, step: number, low: number, high: number): number {
  const nearest = roundToStep(value, step, 'half-even')
  if (nearest < low) return roundToStep(low, step, 'ceiling')
  if (nearest > high) return roundToStep(high, step, 'floor')
  return nearest
}

const plain = (text: string): string => text.replace('−', '-')
