import { assembledTurningTorque, crankTurningTorque } from '../features/references.ts'
import { formatQuantityWithUnit } from '../exact/format-quantity.ts'
import { FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

/** A torque in both units. */
function sayTorque(torque: number): string {
  const imperial = formatQuantityWithUnit(torque, 'poundForceFoot', 1, 'half-even')
  return `${imperial} (${formatQuantityWithUnit(torque, 'newtonMetre', 1, 'half-even')})`
}

const tooTight = remedy(
  'investigate',
  null,
  'Something drags: take off the last part fitted and find where it touched.',
)

/** Turning effort of the crank alone in its bearings. */
export const crankTurningTorqueFit: FitDefinition = {
  key: 'turning-torque-crank',
  title: 'Turning torque, crank alone',
  quantity: 'torque',
  critical: false,
  judgedAt: ['install-crank'],
  parameters: [
    parameter('per-main', 'Greatest for each main bearing', 'torque', 1_356, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines({ engine }, read) {
    const high = read('per-main') * engine.mains.count
    return [
      {
        position: null,
        title: 'Turning torque, crank alone',
        quantity: 'torque',
        measurand: reading(crankTurningTorque, 'each'),
        rule: {
          kind: 'computed',
          limits: limitsOf({ high }),
          formula: 'main bearings × the shop’s greatest for each',
          worked: [`${engine.mains.count} × ${sayTorque(read('per-main'))} = ${sayTorque(high)}`],
        },
        remedy: { low: null, high: tooTight },
      },
    ]
  },
}

/** Turning effort of the finished short block. */
export const assembledTurningTorqueFit: FitDefinition = {
  key: 'turning-torque-assembled',
  title: 'Turning torque, assembled',
  quantity: 'torque',
  critical: false,
  // Valve springs turn with the crank once the heads are on: the short block is felt before.
  judgedAt: ['install-heads', 'final-inspection'],
  parameters: [
    parameter('per-cylinder', 'Greatest for each cylinder', 'torque', 4_067, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines({ engine }, read) {
    const high = read('per-cylinder') * engine.cylinders
    return [
      {
        position: null,
        title: 'Turning torque, assembled',
        quantity: 'torque',
        measurand: reading(assembledTurningTorque, 'each'),
        rule: {
          kind: 'computed',
          limits: limitsOf({ high }),
          formula: 'cylinders × the shop’s greatest for each',
          worked: [`${engine.cylinders} × ${sayTorque(read('per-cylinder'))} = ${sayTorque(high)}`],
        },
        remedy: { low: null, high: tooTight },
      },
    ]
  },
}
