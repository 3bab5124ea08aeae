import type { RouteContext, StageRoute } from './route-context.ts'
import { minutesFor, see, seeIf, SMALL_PART, soak, stageRoute, stepsOf } from './drafting.ts'

const step = stepsOf('planning')

/** New parts in hand, then the plan, while parts can still be sent back. From memory, common practice. */
export function planningRoute({
  engine,
  parts,
  scope,
  features,
  oilGroove,
  filletDoubt,
}: RouteContext): StageRoute {
  return stageRoute([
    step(
      'receive-parts',
      'Receive and measure new parts',
      'inspection',
      minutesFor(75, engine.cylinders, 8),
      ['receive'],
      {
        features: [features.skirts, scope.rods ? features.pins : []],
        observations: [
          soak('New parts and gauges side by side since', SMALL_PART),
          see('sets', 'Sets kept together, lot numbers written down'),
          ...seeIf(scope.assembled, 'walls', 'Shell walls and ring widths measured'),
          see('compression-height', 'Compression height and groove depths agree with the plan'),
          ...seeIf(
            scope.assembled && oilGroove.state === 'unknown',
            'pin-bore-mouth',
            'Mouth of the pin bore measured',
          ),
          ...seeIf(
            scope.assembled && filletDoubt,
            'shell-insets',
            'Shell insets, edge bevels and fillets measured',
          ),
          ...seeIf(
            scope.assembled && parts.retainers !== null,
            'flanks',
            'Ring grooves measured outer flank to outer flank',
          ),
        ],
        cautions: ['Let parts and gauges stand half an hour side by side.'],
      },
    ),
    step(
      'approve-plan',
      'Plan and approve',
      'office',
      30,
      ['crack-test', 'measure-block', 'measure-crank', 'measure-rods', 'measure-heads', 'receive-parts'],
      {
        observations: [
          see('fits', 'Every fit forecast from what was measured'),
          see('findings', 'Every finding of the plan decided'),
          see('approved', 'Customer has authorised the work'),
        ],
        cautions: ['No metal is cut before this is signed.'],
      },
    ),
  ])
}
