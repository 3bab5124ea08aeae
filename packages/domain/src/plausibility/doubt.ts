/**
 * Why a typed value is questioned: `ask` wants one more touch, `block` wants a note. Nothing is ever
 * corrected or dropped by itself.
 */
export interface Doubt {
  readonly outcome: 'ask' | 'block'
  readonly rule: string
  readonly sentence: string
}

export function ask(rule: string, sentence: string): Doubt {
  return { outcome: 'ask', rule, sentence }
}

export function block(rule: string, sentence: string): Doubt {
  return { outcome: 'block', rule, sentence }
}

/** In the order in which they are said. */
export function blocksFirst(doubts: readonly Doubt[]): Doubt[] {
  return doubts.toSorted((one, other) => Number(other.outcome === 'block') - Number(one.outcome === 'block'))
}

/** Whether a value lies in a closed band. */
export function isIn(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high
}
