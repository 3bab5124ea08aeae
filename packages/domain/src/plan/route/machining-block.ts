import type { RouteContext } from './route-context.ts'
import { minutesFor, see, seeAndSay, soak, stepsOf, WHOLE_BLOCK } from './drafting.ts'
import type { Step } from './drafting.ts'

const step = stepsOf('machining')
export const SPINDLE = 'A turning spindle takes sleeves, gloves and fingers.'

/** Mains before decks, decks before bores. From memory, common practice; the shop edits it. */
export function blockMachining({ engine, options, features, scope }: RouteContext): readonly Step[] {
  const { cylinders, mains } = engine
  const banks = features.deckHeights.length
  const surface = engine.boreSurface ?? 'plain'
  const boredHere = surface === 'plain'
  return [
    step(
      'deburr',
      'Deburr and chase threads',
      'hand-work',
      minutesFor(60, cylinders, 8),
      ['approve-plan'],
      {
        observations: [
          see('threads', 'All threads chased'),
          see('edges', 'Sharp edges and casting flash removed'),
        ],
        cautions: ['Wear eye protection.'],
      },
    ),
    step('align-hone', 'Align hone the mains', 'align-hone', minutesFor(90, mains.count, 5), ['deburr'], {
      features: [features.mainHousings],
      observations: [see('aligned', 'Housings in line along the whole mandrel')],
      cautions: ['The mandrel takes two people.', 'The crank’s centreline moves up: deck height shrinks.'],
      when: options.alignHone,
    }),
    step(
      'deck',
      banks > 1 ? 'Deck both banks' : 'Deck the block',
      'mill',
      minutesFor(90, banks, 2),
      ['align-hone'],
      {
        features: [features.deckHeights],
        observations: [see('finish', 'Surface finish fits the gasket')],
        cautions: ['Set up from the main-bore centreline.', SPINDLE],
        when: options.deck,
      },
    ),
    step(
      'bore',
      'Bore, leaving stock for the hone',
      'boring-bar',
      minutesFor(120, cylinders, 8),
      ['deck', 'receive-parts'],
      {
        observations: [
          see('setting', 'Tool setting checked for this piston before the first cut'),
          see('stock', 'Stock for the hone left in every bore'),
        ],
        cautions: [SPINDLE],
        signatures: 2,
        when: options.oversize && boredHere,
      },
    ),
    step(
      'bores-sent-out',
      'Send the bores out, measured out and back',
      'inspection',
      minutesFor(40, cylinders, 8),
      ['deck', 'receive-parts'],
      {
        features: [features.bores],
        observations: [
          seeAndSay('out', 'Every bore measured before it went out', 'To whom, for what work and to what size'),
          seeAndSay('back', 'Every bore measured again when it came back', 'Date, and what the other shop wrote on its sheet'),
          soak('Block and gauges side by side since, before the readings', WHOLE_BLOCK),
        ],
        cautions: [`${surface === 'plated' ? 'Plated' : 'Sleeved'} bores are not bored here.`, 'Lift with rated gear and a second person.'],
        when: options.oversize && !boredHere,
      },
    ),
    step(
      'hone-bores',
      'Hone every bore to its own piston',
      'hone',
      minutesFor(180, cylinders, 8),
      [boredHere ? 'bore' : 'bores-sent-out', 'receive-parts'],
      {
        features: [features.bores],
        observations: [
          soak('Honed block and gauges side by side since, before the last reading', WHOLE_BLOCK),
          seeAndSay(
            'plate', 'Torque plate on, with the gasket and bolts of the build', 'Which plate, and bolts torqued to what',
          ),
          seeAndSay('stones', 'Stones of every stage', 'Stones or abrasive, grit, and load of the last strokes'),
          seeAndSay(
            'finish-asked', 'What the rings’ maker asks of the finish', 'Ra, Rk, Rpk, Rvk and angle, as its sheet says',
          ),
        ],
        cautions: [SPINDLE, 'Honing mist: draw it off.'],
      },
    ),
    step(
      'bore-finish',
      'Finish and crosshatch of the bores',
      'hone',
      minutesFor(20, cylinders, 8),
      ['hone-bores'],
      {
        features: [features.crosshatches, features.boreRoughnesses],
        observations: [see('even', 'Marks even from top to bottom, cut and not smeared')],
        cautions: ['The tester’s point scratches and is scratched: wipe the wall clean and dry first.'],
      },
    ),
    step('check-decks', 'Check the decks flat', 'inspection', minutesFor(20, banks, 2), ['bore-finish'], {
      features: [features.deckFaces],
      observations: [see('bolt-holes', 'No thread raised around a bolt hole, no step at a sleeve')],
      when: scope.heads,
    }),
  ]
}
