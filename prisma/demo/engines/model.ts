import {
  parseLength, parseQuantity, type EngineSpecification, type Limits, type Nanometres, type PartsSpecification,
  type QuantityUnitName, type SheetLimit,
} from '@tenths/domain'

/** An invented engine of the shop's library; its figures are chosen to go together, and belong to no engine that exists. */
export interface DemoEngine {
  readonly engine: EngineSpecification
  readonly parts: PartsSpecification
  /** What its makers' sheets say: only they know how far a bolt is tightened. Invented like the engine. */
  readonly sheets: readonly SheetLimit[]
  /** The unit it is drawn and measured in. */
  readonly unit: 'inch' | 'millimetre'
}

export const inches = (text: string): Nanometres => parseLength(text, 'inch')
export const millimetres = (text: string): Nanometres => parseLength(text, 'millimetre')

/** A crankshaft's weight, in milligrams. */
export const kilograms = (text: string): number => parseQuantity(text, 'kilogram')

const between = (low: number, high: number, target: number): Limits => ({
  low, high, target, adviceLow: null, adviceHigh: null,
})

/** Limits of a length from a part maker's sheet. */
export function lengthSheet(
  fit: string, unit: DemoEngine['unit'], low: string, high: string, target: string, source: string,
): SheetLimit {
  const read = (text: string) => parseLength(text, unit)
  return { fit, level: 'part-maker', limits: between(read(low), read(high), read(target)), source }
}

/** Load of a spring at its installed height, from its card. */
export function springSheet(
  fit: string, unit: QuantityUnitName, low: string, high: string, target: string, source: string,
): SheetLimit {
  return { ...torqueSheet(fit, unit, low, high, target, source), level: 'part-maker' }
}

/** Tightening torque from an engine maker's sheet. */
export function torqueSheet(
  fit: string, unit: QuantityUnitName, low: string, high: string, target: string, source: string,
): SheetLimit {
  const read = (text: string) => parseQuantity(text, unit)
  return { fit, level: 'engine-maker', limits: between(read(low), read(high), read(target)), source }
}
