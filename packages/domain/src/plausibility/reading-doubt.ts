import type { ReaderUnit } from '../exact/length-unit.ts'
import type { Doubt } from './doubt.ts'
import { dialRevolution, thimbleTurn, wrongSign } from './gauge-slip.ts'
import { checkMagnitude } from './magnitude.ts'
import type { PlausibilityNumbers } from './numbers.ts'
import type { ReadingContext } from './reading-context.ts'
import { closedPair, farFromNeighbours, farFromNominal, growth, outOfRange } from './size-doubt.ts'

/**
 * Every doubt about one typed length. A value in the wrong unit is a thousand other things as well: what is said of its
 * magnitude is all that is said.
 */
export function doubtsOfReading(reading: ReadingContext, unit: ReaderUnit, numbers: PlausibilityNumbers): readonly Doubt[] {
  const magnitude = checkMagnitude(reading.value, reading.nominal, numbers.magnitude)
  if (magnitude !== null) return [magnitude]
  const doubts = [
    thimbleTurn(reading, numbers, unit),
    dialRevolution(reading, numbers),
    wrongSign(reading, numbers),
    farFromNeighbours(reading, numbers, unit),
    farFromNominal(reading, numbers, unit),
    growth(reading, numbers),
    closedPair(reading),
    outOfRange(reading, numbers, unit),
  ]
  return doubts.filter((doubt) => doubt !== null)
}
