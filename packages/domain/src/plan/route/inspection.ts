import { isBoosted, isSustained } from '../../engine/duty.ts'
import type { RouteContext, StageRoute } from './route-context.ts'
import { crackAreas } from './crack-areas.ts'
import { minutesFor, see, seeIf, soak, stageRoute, stepsOf, WHOLE_BLOCK } from './drafting.ts'

const step = stepsOf('inspection')

/** Cracks first, then sizes as received. From memory, common practice; the shop edits it. */
export function inspectionRoute(context: RouteContext): StageRoute {
  const { engine, duty, features, options, scope } = context
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
        inspections: crackAreas(context),
        observations: [see('clean', 'Every part demagnetised, rinsed and dried after its test')],
        cautions: [
          'A trained inspector decides what an indication is.',
          'Keep clear of a part under test pressure.',
          'Penetrant, developer and lamp: gloves, air, no flame, no skin or eyes in the lamp.',
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
        observations: [
          soak('Block and gauges side by side since', WHOLE_BLOCK),
          see('caps', 'Main caps torqued'),
          see('flat', 'Decks flat under the straight edge'),
          ...seeIf(options.oversize, 'walls', 'Cylinder walls thick enough to bore, by ultrasound at four places each'),
        ],
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
        features: [features.mainJournals, features.rodJournals, features.mainRunOuts],
        observations: [
          ...seeIf(features.mainRunOuts.length === 0, 'run-out', 'Both ends run true'),
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
          soak('Heads and gauges side by side since', WHOLE_BLOCK),
          see('seats', 'Seats tight, none sunk too deep to be cut'),
          see('springs', 'Springs at installed height against their sheet'),
        ],
        cautions: ['Let heads and gauges stand two hours side by side before the first reading.'],
        when: scope.heads,
      },
    ),
  ])
}
