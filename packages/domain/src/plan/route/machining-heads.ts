import type { RouteContext } from './route-context.ts'
import { minutesFor, see, stepsOf } from './drafting.ts'
import type { Step } from './drafting.ts'
import { SPINDLE } from './machining-block.ts'

const step = stepsOf('machining')

/** Guides before seats, seats before faces: each is cut from the one before. From memory, common practice. */
export function headMachining({ engine, features, scope }: RouteContext): readonly Step[] {
  const { cylinders } = engine
  return [
    step(
      'fit-guides',
      'Fit guides, each to its own valve',
      'head-bench',
      minutesFor(120, cylinders, 8),
      ['approve-plan'],
      {
        features: [features.stems, features.guides],
        observations: [
          see('clean', 'Every guide brushed and dry before it is measured'),
          see('seal-diameter', 'Guide tops fit the seals of the build'),
        ],
        cautions: ['Wear eye protection; a reamer grabs.', 'Let the head cool before the last reading.'],
        when: scope.heads,
      },
    ),
    step(
      'cut-seats',
      'Cut seats and face valves',
      'head-bench',
      minutesFor(180, cylinders, 8),
      ['fit-guides'],
      {
        features: [features.seatRunOuts],
        observations: [
          see('width', 'Seat width and place on the valve’s face as the sheet says'),
          see('margin', 'Every valve keeps its margin'),
          see('tight', 'Every valve tight under vacuum or fluid'),
        ],
        cautions: [
          'Some seats hold beryllium: wet, drawn off, never blown.',
          'A hollow stem may hold sodium: never cut one open.',
        ],
        when: scope.heads,
      },
    ),
    step(
      'surface-heads',
      'Surface the heads',
      'mill',
      minutesFor(90, features.headFaces.length, 2),
      ['cut-seats'],
      {
        features: [features.headFaces],
        observations: [
          see('finish', 'Surface finish fits the gasket'),
          see('chamber', 'Chamber volume and head thickness written down'),
        ],
        cautions: [SPINDLE, 'Magnesium chips burn: no water on them.'],
        when: scope.heads,
      },
    ),
  ]
}
