import type { RouteContext } from './route-context.ts'
import { minutesFor, see, stepsOf } from './drafting.ts'
import type { Step } from './drafting.ts'

const step = stepsOf('machining')

/** Crank, rods, pins and balance. From memory, common practice; the shop edits it. */
export function partsMachining(context: RouteContext): readonly Step[] {
  const { engine, parts, options, features } = context
  const { cylinders, rodJournals } = engine
  const journals = [features.mainJournals, features.rodJournals]
  const crankSeen = [
    see('fillets', 'Fillets full and smooth'),
    see('oil-holes', 'Oil holes chamfered and clean'),
  ]
  const floating = parts.pin.fit === 'floating'
  return [
    step(
      'grind-crank',
      'Grind the crankshaft',
      'crank-grinder',
      minutesFor(240, rodJournals.count, 4),
      ['approve-plan'],
      {
        features: journals,
        observations: crankSeen,
        when: options.crank === 'grind',
        cautions: ['Wheel and crank turn: keep the guards shut.', 'Grinding mist: draw it off.'],
      },
    ),
    step(
      'polish-crank',
      'Polish the crankshaft',
      'crank-grinder',
      minutesFor(45, rodJournals.count, 4),
      ['approve-plan'],
      {
        features: journals,
        observations: crankSeen,
        when: options.crank === 'polish',
        cautions: ['Polish in the direction of running.', 'A belt takes sleeves and fingers.'],
      },
    ),
    step(
      'resize-rods',
      'Fit bolts and resize the rods',
      'rod-hone',
      minutesFor(120, cylinders, 8),
      ['approve-plan'],
      {
        features: [features.bigEnds],
        observations: [see('own-bolts', 'Each rod sized with its own bolts and lubricant')],
        cautions: ['A spinning mandrel grabs: hold the rod with the stop.'],
        when: options.newRodBolts,
      },
    ),
    step(
      'hone-small-ends',
      floating ? 'Bush and hone small ends to their own pins' : 'Size the small ends for pressed pins',
      'pin-hone',
      minutesFor(100, cylinders, 8),
      ['resize-rods', 'receive-parts'],
      {
        features: [features.smallEnds],
        observations: floating
          ? [
              see('oil-hole', 'Oil hole open through the bushing'),
              see('slides', 'Oiled pin slides through freely'),
            ]
          : [see('chamfer', 'Edges chamfered so that the pin starts square')],
        cautions: ['Let the rod cool before the last reading.'],
      },
    ),
    step('fit-pins', 'Fit pins to pistons', 'pin-hone', minutesFor(60, cylinders, 8), ['approve-plan'], {
      features: [features.pinBores],
      observations: [see('own-weight', 'Oiled pin slides through under its own weight')],
    }),
    balance(context),
  ]
}

/**
 * Everything weighed and matched to its lightest, then the crank spun: with bobweights for V engines and singles, bare for
 * the others.
 */
function balance({ engine, options, features, bobweights }: RouteContext): Step {
  const bare = bobweights === null
  const minutes = minutesFor(bare ? 120 : 180, engine.cylinders, 8)
  const partsReady = ['polish-crank', 'grind-crank', 'hone-small-ends', 'fit-pins']
  // With a longer stroke counterweights may still have to be cut: trial assembly comes first.
  return step(
    'balance',
    bare ? 'Match weights, spin the crank bare' : 'Match weights, balance with bobweights',
    'balancer',
    minutes,
    options.stroked === true ? ['trial-assembly', ...partsReady] : partsReady,
    {
      features: [
        features.pistonWeights, features.pinWeights, features.bigEndWeights, features.smallEndWeights, features.setWeights,
        features.crankUnbalance,
      ],
      observations: [
        see('matched', 'Pistons, pins and both rod ends matched'),
        ...(bare ? [] : [see('bobweights', 'Bobweights made up from the weights written down')]),
        see('residual', 'Residual unbalance in both planes within the shop’s grade'),
      ],
      cautions: ['Stand clear of the spinning crank; bolts and weights fly.'],
      when: options.balance,
      bobweights,
    },
  )
}
