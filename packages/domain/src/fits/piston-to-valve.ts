import type { ValveKind } from '../engine/valves.ts'
import { valveKinds, valveKindTitles, valvesOf } from '../engine/valves.ts'
import { valveRoomDirections, valveToPiston } from '../features/top-end/references.ts'
import type { ValveRoomDirection } from '../features/top-end/references.ts'
import {
  FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy, say, THOUSANDTH,
} from './building-blocks.ts'
import type { ComputedRule, FitContext, FitDefinition, ParameterReader } from './fit-definition.ts'

/** Starter figures in thousandths: an exhaust valve is chased by its piston and may float into it. */
const axialLeast: Record<ValveKind, number> = { intake: 80, exhaust: 100 }

/** Least room between a valve and its piston, along the valve and around its head. */
export const pistonToValve: readonly FitDefinition[] = valveKinds.flatMap((kind) =>
  valveRoomDirections.map((direction) => pistonToValveFit(kind, direction)),
)

function pistonToValveFit(kind: ValveKind, direction: ValveRoomDirection): FitDefinition {
  const title = `${valveKindTitles[kind]} valve to piston, ${direction}`
  return {
    key: `${kind}-valve-to-piston-${direction}`,
    title,
    critical: true,
    judgedAt: ['valve-room'],
    parameters: [
      ...(direction === 'axial'
        ? [
            parameter('low', 'Least, steel rods', 'length', axialLeast[kind] * THOUSANDTH, FROM_MEMORY),
            // Aluminium rods stretch more at speed and with heat.
            parameter('aluminium', 'Added for aluminium rods', 'length', 20 * THOUSANDTH, FROM_MEMORY),
          ]
        : [parameter('low', 'Least', 'length', 50 * THOUSANDTH, FROM_MEMORY)]),
      guardParameter('guarded'),
    ],
    lines(context, read) {
      const rule = direction === 'axial' ? axialRule(context, read) : radialRule(read)
      return valvesOf(context.engine, kind).map((valve) => ({
        position: valve.number,
        title: `${title}, valve ${valve.number}`,
        quantity: 'length',
        measurand: reading(valveToPiston(direction, valve), 'each'),
        rule,
        remedy: {
          low: remedy(
            'investigate',
            null,
            'Check the cam’s timing against its card; else a thicker gasket, or a relief no deeper than the '
              + 'piston’s maker allows.',
          ),
          high: null,
        },
      }))
    },
  }
}

function axialRule({ parts }: FitContext, read: ParameterReader): ComputedRule {
  const added = parts.rod.material === 'aluminium' ? read('aluminium') : 0
  const low = read('low') + added
  return {
    kind: 'computed',
    limits: limitsOf({ low }),
    formula: 'the least room within 20° of top centre on overlap, at least the limit; more with aluminium rods',
    worked: [added === 0 ? `Steel rods: ${say(low)}` : `${say(read('low'))} + ${say(added)} = ${say(low)}`],
  }
}

function radialRule(read: ParameterReader): ComputedRule {
  const low = read('low')
  return {
    kind: 'computed',
    limits: limitsOf({ low }),
    formula: 'valve head to the edge of its relief, at least the limit',
    worked: [`Least: ${say(low)}`],
  }
}
