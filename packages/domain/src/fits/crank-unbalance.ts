import { permissibleUnbalance } from '../balance/residual.ts'
import { round } from '../exact/rounding.ts'
import { crankUnbalance } from '../features/references.ts'
import {
  COMMON_PRACTICE, guardParameter, limitsOf, parameter, reading, remedy, sayBoth,
} from './building-blocks.ts'
import type { ComputedRule, FitContext, FitDefinition, ParameterReader, SheetNeeded } from './fit-definition.ts'

const ISO_GRADE = 'ISO 21940-11, crankshaft drives inherently balanced and rigidly mounted: G 16, from memory'
const UNKNOWN = 'How much unbalance may stay hangs on the crankshaft’s weight and the greatest speed: write both with the '
  + 'engine, or enter what the balancing sheet allows in each plane.'
const MILLIGRAMS_PER_KILOGRAM = 1_000_000

/**
 * What may stay in each plane when the crank spins. The numbers of the bobweight stand here too, because a crank that is spun
 * with wrong bobweights is wrong however little stays.
 */
export const crankUnbalanceFit: FitDefinition = {
  key: 'crank-unbalance',
  title: 'Residual unbalance of the crankshaft',
  quantity: 'unbalance',
  critical: true,
  judgedAt: ['balance'],
  parameters: [
    parameter('grade', 'Balance quality grade G', 'grade', 16_000, ISO_GRADE),
    parameter('factor', 'Bobweight: share of the reciprocating weight, 90° V8', 'percent', 50, COMMON_PRACTICE),
    parameter('oil', 'Bobweight: oil that clings to a crankpin', 'mass', 4_000, COMMON_PRACTICE),
    guardParameter('accepted'),
  ],
  lines: (context, read) => [
    {
      position: null,
      title: 'Residual unbalance of the crankshaft, each plane',
      quantity: 'unbalance',
      measurand: reading(crankUnbalance, 'greatest'),
      rule: limitOf(context, read),
      remedy: {
        low: null,
        high: remedy('lighten', null, 'Drill the counterweight where the machine shows it heavy, or set heavy metal across from it, and spin again.'),
      },
    },
  ],
}

function limitOf({ engine }: FitContext, read: ParameterReader): ComputedRule | SheetNeeded {
  const { greatestSpeed, crank } = engine
  if (crank?.mass === undefined || greatestSpeed === undefined) return { kind: 'sheet-needed', reason: UNKNOWN }
  const grade = read('grade') / 1_000
  const kilograms = crank.mass / MILLIGRAMS_PER_KILOGRAM
  const whole = permissibleUnbalance(kilograms, grade, greatestSpeed)
  const high = round((whole * 1_000) / 2, 'floor')
  return {
    kind: 'computed',
    limits: limitsOf({ high }),
    formula: 'crankshaft’s mass × 1000 × G ÷ (2π × greatest speed ÷ 60), half of it in each plane (ISO 21940-11)',
    worked: [
      `${kilograms.toFixed(2)} kg × 1000 × ${grade} mm/s ÷ (2π × ${greatestSpeed} ÷ 60) = ${whole.toFixed(0)} g·mm`,
      `Half of it in each plane: ${sayBoth(high, 'unbalance')}; bobweights are left out of the mass, which is the stricter`,
    ],
  }
}
