import { isBoosted, isSustained } from '../../engine/duty.ts'
import type { RouteContext, StageRoute } from './route-context.ts'
import { minutesFor, see, seeIf, stageRoute, stepsOf } from './drafting.ts'

const step = stepsOf('inspection')

/** Cracks first, then sizes as received. From memory, common practice; the shop edits it. */
export function inspectionRoute({ engine, duty, features, scope }: RouteContext): StageRoute {
  const { cylinders, mains } = engine
  const wet = engine.cooling === 'water'
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
          ...seeIf(scope.block, 'block', 'Block: no indication at main webs, bores and deck'),
          ...seeIf(scope.crank, 'crank', 'Crankshaft: no indication at fillets and oil holes'),
          ...seeIf(scope.rods, 'rods', 'Rods: no indication on beam, bolt seats and small end'),
          ...seeIf(scope.heads, 'heads', 'Heads: no indication between seats, at plug holes and guides'),
          ...seeIf(scope.block && wet, 'pressure', 'Water jacket holds pressure'),
          ...seeIf(scope.heads && wet, 'head-pressure', 'Water jacket of every head holds pressure'),
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
    step(
      'measure-heads',
      'Measure the heads as received',
      'head-bench',
      minutesFor(90, cylinders, 8),
      ['crack-test'],
      {
        features: [features.stems, features.guides, features.headFaces],
        observations: [
          see('seats', 'Seats tight, none sunk too deep to be cut'),
          see('springs', 'Springs at installed height against their sheet'),
        ],
        cautions: ['Let heads and gauges stand two hours side by side before the first reading.'],
        when: scope.heads,
      },
    ),
  ])
}
