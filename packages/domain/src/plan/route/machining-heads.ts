import type { RouteContext } from './route-context.ts'
import { minutesFor, see, seeIf, stepsOf } from './drafting.ts'
import type { Step } from './drafting.ts'
import { SPINDLE } from './machining-block.ts'

const step = stepsOf('machining')

/** Guides before seats, seats before faces: each is cut from the one before. From memory, common practice. */
export function headMachining({ engine, features, options, scope }: RouteContext): readonly Step[] {
  const { cylinders } = engine
  return [
    step(
      'fit-guides',
      'Fit guides, each to its own valve',
      'head-bench',
      minutesFor(120, cylinders, 8),
      ['approve-plan'],
      {
        features: [options.newGuides === true ? features.guidePresses : [], features.stems, features.guides],
        observations: [
          ...seeIf(options.newGuides === true, 'height', 'New guides home, all at one height'),
          see('clean', 'Every guide brushed and dry before it is measured'),
          see('seal-diameter', 'Guide tops fit the seals of the build'),
        ],
        cautions: [
          ...(options.newGuides === true ? ['A heated head burns: gloves; a driver that slips flies.'] : []),
          'Wear eye protection; a reamer grabs.',
          'Let the head cool before the last reading.',
        ],
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
        features: [
          options.newSeats === true ? features.seatPresses : [],
          features.seatRunOuts,
          features.seatWidths,
          features.valveMargins,
        ],
        observations: [
          ...seeIf(options.newSeats === true, 'seats-home', 'New seat rings home on the floor of their counterbore, all round'),
          see('place', 'Seat in the middle of the valve’s face, seen by ink'),
          see('tight', 'Every valve tight under vacuum or fluid'),
        ],
        cautions: [
          ...(options.newSeats === true ? ['A heated head burns, and so does a chilled ring: gloves.'] : []),
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
