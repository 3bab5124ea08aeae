import { sayLength } from '../exact/format-length.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import { median } from '../statistics/sample.ts'
import { ask, type Doubt } from './doubt.ts'
import type { PlausibilityNumbers } from './numbers.ts'
import type { ReadingContext } from './reading-context.ts'

/** A thimble read one turn off: the value lies just there from its neighbours. */
export function thimbleTurn(
  { value, neighbours }: ReadingContext, { thimbleTurns }: PlausibilityNumbers, unit: ReaderUnit,
): Doubt | null {
  if (neighbours.length === 0) return null
  const away = Math.abs(value - median(neighbours))
  const turn = thimbleTurns.find(({ off, near }) => Math.abs(away - off) <= near)
  if (turn === undefined) return null
  return ask('thimble-turn', `About ${sayLength(turn.off, unit)} from its neighbours: is the thimble one turn off?`)
}

/** A dial that went round once more than was counted. */
export function dialRevolution(
  { value, neighbours, dialRevolution: turn }: ReadingContext, { revolutionShare }: PlausibilityNumbers,
): Doubt | null {
  if (neighbours.length === 0 || turn === null) return null
  const away = Math.abs(value - median(neighbours))
  if (Math.abs(away - turn) > revolutionShare * turn) return null
  return ask('dial-revolution', 'One whole turn of the dial from its neighbours: did the needle go round?')
}

/** A plus typed for a minus: turned round the setting size, the value would agree with its neighbours. */
export function wrongSign(
  { value, neighbours, settingSize }: ReadingContext, { sign }: PlausibilityNumbers,
): Doubt | null {
  if (neighbours.length === 0 || settingSize === null) return null
  const middle = median(neighbours)
  const flipped = 2 * settingSize - value
  if (Math.abs(flipped - middle) > sign.flippedWithin || Math.abs(value - middle) < sign.typedOff) return null
  return ask('sign', 'With the other sign this would agree with its neighbours: plus or minus?')
}
