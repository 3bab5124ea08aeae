import type { RouteContext, StageRoute } from './route-context.ts'
import { see, seeIf, stageRoute, stepsOf } from './drafting.ts'

const step = stepsOf('handover')

/** The engine and its papers leave together. From memory, common practice; the shop edits it. */
export function handoverRoute({ scope }: RouteContext): StageRoute {
  const title = scope.assembled ? 'Record, first-start sheet, collection' : 'Record and collection'
  return stageRoute([
    step('hand-over', title, 'counter', 25, ['parts-inspection'], {
      observations: [
        see('record', 'Build record handed over'),
        ...seeIf(scope.assembled, 'first-start', 'First-start and running-in sheet explained'),
        see('terms', 'Claims terms explained'),
      ],
      cautions: ['Lift with rated gear and a second person.'],
    }),
  ])
}
