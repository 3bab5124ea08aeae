import { formatQuantityWithUnit } from '../exact/format-quantity.ts'
import { parseQuantity } from '../exact/parse-quantity.ts'
import { leakDown } from '../features/top-end/references.ts'
import { FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

/** A pressure in both units. */
function sayPressure(pressure: number): string {
  const imperial = formatQuantityWithUnit(pressure, 'poundPerSquareInch', 1, 'half-even')
  return `${imperial} (${formatQuantityWithUnit(pressure, 'kilopascal', 1, 'half-even')})`
}

const psi = (text: string) => parseQuantity(text, 'poundPerSquareInch')

/** Pressure that a cold, new cylinder loses of a feed of 100 psi: pounds lost are hundredths lost. */
export const leakDownFit: FitDefinition = {
  key: 'leak-down',
  title: 'Leak-down',
  quantity: 'pressure',
  critical: false,
  judgedAt: ['install-heads'],
  parameters: [
    parameter('high', 'Greatest loss of 100 psi (689 kPa)', 'pressure', psi('20'), FROM_MEMORY),
    parameter('usual-high', 'Advised at most', 'pressure', psi('10'), FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines({ cylinders }, read) {
    const [high, adviceHigh] = [read('high'), read('usual-high')]
    return cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Leak-down of cylinder ${cylinder}`,
      quantity: 'pressure',
      measurand: reading(leakDown(cylinder), 'greatest'),
      rule: {
        kind: 'computed',
        limits: limitsOf({ high, adviceHigh }),
        formula: 'pressure lost of a feed of 100 psi at top centre, at most the limit',
        worked: [`At most ${sayPressure(high)}; new rings seldom lose more than ${sayPressure(adviceHigh)}`],
      },
      remedy: {
        low: null,
        high: remedy('investigate', null, 'Hear where it goes: intake, exhaust, oil filler or the next cylinder.'),
      },
    }))
  },
}
