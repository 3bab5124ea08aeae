import { isBoosted, isSustained } from '../../engine/duty.ts'
import type { RouteContext, StageRoute } from './route-context.ts'
import { minutesFor, see, stageRoute, stepsOf } from './drafting.ts'

const step = stepsOf('inspection')

/** Cracks first, then sizes as received. From memory, common practice; the shop edits it. */
export function inspectionRoute({ engine, duty, features }: RouteContext): StageRoute {
  const { cylinders, mains } = engine
  const hardUse = isBoosted(duty) || isSustained(duty)
  return stageRoute([
    step(
      'crack-test',
      'Crack and pressure test',
      'inspection',
      minutesFor(90, cylinders, 8),
      ['strip-wash'],
      {
        observations: [
          see('block', 'Block: no indication at main webs, bores and deck'),
          see('crank', 'Crankshaft: no indication at fillets and oil holes'),
          see('rods', 'Rods: no indication on beam, bolt seats and small end'),
          ...(engine.cooling === 'water' ? [see('pressure', 'Water jacket holds pressure')] : []),
          see('method', 'Method, areas and inspector written down'),
        ],
        cautions: [
          'A trained inspector decides what an indication is.',
          'Keep clear of a part under test pressure.',
        ],
        // On rods and crank of forced or sustained duty "no indication" takes a second pair of eyes.
        signatures: hardUse ? 2 : 1,
      },
    ),
    step(
      'measure-block',
      'Measure the block as received',
      'inspection',
      minutesFor(100, cylinders, 8),
      ['crack-test'],
      {
        features: [features.bores, features.mainHousings, features.deckHeights],
        observations: [see('caps', 'Main caps torqued'), see('flat', 'Decks flat under the straight edge')],
        cautions: ['Let block and gauges stand two hours side by side before the first reading.'],
      },
    ),
    step(
      'measure-crank',
      'Measure the crankshaft',
      'inspection',
      minutesFor(60, mains.count, 5),
      ['crack-test'],
      {
        features: [features.mainJournals, features.rodJournals],
        observations: [
          see('run-out', 'Run-out on the centre main'),
          see('widths', 'Journal widths and fillet radii written down'),
        ],
        cautions: ['Keep off fillets and oil holes.'],
      },
    ),
    step('measure-rods', 'Measure the rods', 'rod-bench', minutesFor(60, cylinders, 8), ['crack-test'], {
      features: [features.bigEnds, features.smallEnds],
      observations: [
        see('own-caps', 'Every rod with its own cap, torqued'),
        see('straight', 'Length, bend and twist checked'),
      ],
    }),
  ])
}
