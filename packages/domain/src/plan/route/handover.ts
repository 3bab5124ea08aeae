import type { StageRoute } from './route-context.ts'
import { see, stageRoute, stepsOf } from './drafting.ts'

const step = stepsOf('handover')

/** The engine and its papers leave together. From memory, common practice; the shop edits it. */
export function handoverRoute(): StageRoute {
  return stageRoute([
    step('hand-over', 'Record, first-start sheet, collection', 'counter', 25, ['final-inspection'], {
      observations: [
        see('record', 'Build record handed over'),
        see('first-start', 'First-start and running-in sheet explained'),
        see('terms', 'Claims terms explained'),
      ],
      cautions: ['Lift with rated gear and a second person.'],
    }),
  ])
}
