import type { RouteContext, StageRoute } from './route-context.ts'
import { minutesFor, see, stageRoute, stepsOf } from './drafting.ts'

const step = stepsOf('intake')

/** From the counter to a clean, stripped engine. From memory, common practice; the shop edits it. */
export function intakeRoute({ engine, scope }: RouteContext): StageRoute {
  return stageRoute([
    step('receive', 'Receive, photograph and tag', 'counter', 45, [], {
      observations: [
        see('photographed', 'Photographed from all sides'),
        see('listed', 'List of what came and what is missing, initialled'),
        see('damage', 'Damage that was there before, written down'),
        see('numbers', 'Casting and serial numbers written down'),
        see('tagged', 'Engine and every loose part tagged'),
      ],
      cautions: ['Lift with rated gear and a second person: engines fall from hoists and stands.'],
    }),
    step('tear-down', 'Tear down in order', 'teardown', minutesFor(120, engine.cylinders, 8), ['receive'], {
      observations: [
        see('turns', 'How the crank turns as found, and its end play'),
        see('caps-marked', 'Caps and rods marked to their place before the first bolt'),
        see('oil-and-filter', 'Oil and opened filter looked at for metal'),
      ],
      cautions: [
        'Mark caps before anything is loosened.',
        'Springs and retainers hold energy: wear eye protection.',
        'Old gaskets may hold asbestos: keep them wet and do not grind them.',
        'Seals of fluoro-rubber that were burnt leave acid: do not touch them with bare hands.',
        'Lift with rated gear and a second person: engines fall from hoists and stands.',
      ],
    }),
    step(
      'strip-heads',
      'Take the heads apart in order',
      'head-bench',
      minutesFor(60, engine.cylinders, 8),
      ['tear-down'],
      {
        observations: [
          see('in-order', 'Valves, springs and lifters kept to their place'),
          see('stem-tips', 'Stem tips dressed before a valve is drawn through its guide'),
        ],
        cautions: [
          'Springs hold energy: compressor square on the retainer, eye protection, face out of line.',
          'A hollow stem may hold sodium: never cut one open.',
        ],
        when: scope.heads,
      },
    ),
    step(
      'strip-wash',
      'Strip wash, plugs out',
      'wash',
      minutesFor(60, engine.cylinders, 8),
      ['strip-heads'],
      {
        observations: [
          see('plugs-out', 'All gallery and core plugs out and counted'),
          see('by-material', 'Aluminium kept out of caustic'),
          see('dry', 'Dry and oiled where it would rust'),
        ],
        cautions: [
          'No caustic on aluminium: it makes hydrogen and ruins the part.',
          'Gloves, apron and face shield.',
          'Solvent burns and its vapour stuns: air, gloves, no flame.',
          'Never spin a bearing with compressed air.',
        ],
      },
    ),
  ])
}
