import type { Quantity } from '../features/feature.ts'
import type { FitParameter } from './fit-definition.ts'
import { fits } from './index.ts'

/** A rule as the shop finds it before anybody has edited a number. */
export interface StarterRule {
  readonly fit: string
  readonly title: string
  readonly quantity: Quantity
  readonly parameters: readonly FitParameter[]
}

/** The rule that every shop starts from, one for each fit, for the owner to edit. */
export function starterRules(): readonly StarterRule[] {
  return fits.map(({ key, title, quantity = 'length', parameters }) => ({ fit: key, title, quantity, parameters }))
}
