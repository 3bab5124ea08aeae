import { DomainError } from '../errors.ts'

/** How a number between two whole steps becomes one of them. */
export const roundingModes = ['half-even', 'half-away', 'down', 'up', 'floor', 'ceiling'] as const
export type RoundingMode = (typeof roundingModes)[number]

/**
 * The one place where a real number becomes a whole one.
 * @param value any finite number, in whatever unit the caller works
 * @param mode how to choose: `down` is toward zero, `up` away from it, `floor` and `ceiling` toward −∞ and +∞
 * @throws DomainError `value-out-of-range` when the value or its result is not a safe whole number (NaN included)
 */
export function round(value: number, mode: RoundingMode): number {
  const below = Math.floor(value)
  const whole = below === value ? value : pick(value, below, mode)
  if (!Number.isSafeInteger(whole)) {
    throw new DomainError('value-out-of-range', `${value} cannot be rounded to a whole number.`)
  }
  return whole === 0 ? 0 : whole
}

function pick(value: number, below: number, mode: RoundingMode): number {
  const above = below + 1
  switch (mode) {
    case 'floor': return below
    case 'ceiling': return above
    case 'down': return value < 0 ? above : below
    case 'up': return value < 0 ? below : above
  }
  const fraction = value - below
  if (fraction !== 0.5) return fraction < 0.5 ? below : above
  if (mode === 'half-even') return below % 2 === 0 ? below : above
  return value < 0 ? below : above
}

/** Rounds `value` to the nearest multiple of `step` (both in the same unit; `step` a positive whole number). */
export function roundToStep(value: number, step: number, mode: RoundingMode): number {
  if (!Number.isSafeInteger(step) || step <= 0) {
    throw new DomainError('value-out-of-range', `A step of ${step} is not a positive whole number.`)
  }
  return round(value / step, mode) * step
}
