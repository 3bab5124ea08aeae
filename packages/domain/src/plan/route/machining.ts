import type { RouteContext, StageRoute } from './route-context.ts'
import { minutesFor, see, stageRoute, stepsOf } from './drafting.ts'
import { blockMachining } from './machining-block.ts'
import { headMachining } from './machining-heads.ts'
import { partsMachining } from './machining-parts.ts'

const step = stepsOf('machining')

/** Everything that takes metal off, and the wash that closes it. */
export function machiningRoute(context: RouteContext): StageRoute {
  const stroked = context.options.stroked === true
  const machined = [
    'check-decks', 'grind-crank', 'polish-crank', 'hone-small-ends', 'fit-pins',
    ...(context.scope.heads ? ['surface-heads'] : []),
  ]
  return stageRoute([
    ...blockMachining(context),
    ...partsMachining(context),
    ...headMachining(context),
    step(
      'wash-for-measuring', 'Wash for measuring', 'wash', minutesFor(75, context.engine.cylinders, 8),
      stroked ? machined : [...machined, 'balance'],
      {
        observations: [
          see('bore-tops', 'Bore tops chamfered'),
          see('galleries', 'Galleries brushed from both ends'),
          see('white-cloth', 'White cloth comes out of every bore clean'),
          see('oiled', 'Oiled at once'),
        ],
        cautions: ['Wear eye protection when blowing out; never spin a bearing with compressed air.'],
      },
    ),
  ])
}
