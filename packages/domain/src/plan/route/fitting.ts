import type { RouteContext, StageRoute } from './route-context.ts'
import { minutesFor, see, stageRoute, stepsOf } from './drafting.ts'

const step = stepsOf('fitting')

/** Measured in place, put together once, taken apart. From memory, common practice; the shop edits it. */
export function fittingRoute(context: RouteContext): StageRoute {
  const { engine, parts, features, supportRail, options, scope, sheets } = context
  const { cylinders, mains } = engine
  const stroked = options.stroked === true
  const fitted = ['ring-gaps', 'main-bearings', 'rod-bearings']
  const shells = [
    see('oil-holes', 'Oil holes in line with the housing’s'),
    see('lugs', 'Lugs seated, grooved halves where they belong'),
  ]
  return stageRoute([
    step(
      'support-rails',
      'Fit oil-ring support rails',
      'clean-bench',
      minutesFor(40, cylinders, 8),
      ['wash-for-measuring'],
      {
        features: [features.oilRingSideClearances],
        observations: [
          see('dimple', 'Rail’s dimple downward in the opening of the pin bore'),
          see('cannot-turn', 'Rail cannot turn in its groove'),
        ],
        cautions: ['Rail edges cut.'],
        when: supportRail,
      },
    ),
    step(
      'ring-gaps',
      'File and fit the rings, each in its own bore',
      'clean-bench',
      minutesFor(120, cylinders, 8),
      ['support-rails'],
      {
        features: [
          features.ringGaps,
          features.railGaps,
          features.ringSideClearances,
          features.ringBackClearances,
        ],
        observations: [
          see('square', 'Every ring square in its finished bore'),
          see('deburred', 'Filed ends deburred'),
          see('marked', 'Every ring kept with its bore'),
        ],
        cautions: ['File inward only: the face chips.'],
      },
    ),
    step(
      'main-bearings',
      'Main bearings in place',
      'assembly',
      minutesFor(60, mains.count, 5),
      ['wash-for-measuring'],
      {
        features: [features.mainBearings],
        observations: shells,
        cautions: ['Nearer to a limit than the uncertainty: a second person measures with another gauge.'],
      },
    ),
    step(
      'rod-bearings',
      'Rod bearings in place',
      'assembly',
      minutesFor(75, cylinders, 8),
      ['wash-for-measuring'],
      {
        features: [features.rodBearings],
        observations: [...shells, see('free-lengths', 'Free length of every rod bolt written down')],
        cautions: ['Nearer to a limit than the uncertainty: a second person measures with another gauge.'],
      },
    ),
    step(
      'trial-assembly',
      'Trial assembly, oiled, no sealant',
      'assembly',
      minutesFor(120, cylinders, 8),
      stroked ? fitted : [...fitted, 'balance'],
      {
        features: [
          features.deckClearances,
          features.rodSideClearances,
          features.trialEndPlay,
          parts.pin.fit === 'floating' ? features.pinEndPlays : [],
        ],
        observations: trialObservations(context),
        cautions: ['Turn the crank by hand only, fingers clear.', 'A second person for the crank.'],
      },
    ),
    step(
      'valve-room',
      'Valves against pistons, cam degreed',
      'assembly',
      minutesFor(90, cylinders, 8),
      ['trial-assembly'],
      {
        features: [sheets.has('cam-centreline') ? features.camCentreline : [], features.valveRooms],
        observations: [
          see('degreed', 'Camshaft degreed against its card before the first reading'),
          see('gasket', 'Head on with a gasket of the thickness of the build'),
          see('rotation', 'Room read every 2 degrees within 20 of top centre on overlap'),
        ],
        cautions: [
          'Light checking springs; turn by hand only: a valve that meets its piston bends.',
          'An engine that may over-rev, and a maker’s own figure, ask for more room.',
        ],
        when: scope.heads,
      },
    ),
    step(
      'take-apart',
      'Take apart, correct, close findings',
      'office',
      30,
      stroked ? ['valve-room', 'balance'] : ['valve-room'],
      {
        features: [features.rodBoltSets],
        observations: [see('findings', 'Every finding closed')],
        cautions: ['Any cut from here on goes back to the wash for measuring.'],
      },
    ),
  ])
}

function trialObservations({ engine, supportRail, oilGroove }: RouteContext) {
  return [
    see('shell-to-fillet', 'No shell edge touches a fillet'),
    see('crank-to-block', 'Crank and rods clear the block all round'),
    see('rod-to-piston', 'Rods clear pistons and each other'),
    ...(engine.pinSharing === 'two-plain-rods'
      ? [see('chamfers', 'Every wide chamfer faces its cheek')]
      : []),
    ...(supportRail ? [see('rails', 'Every support rail sits in its opening')] : []),
    ...(oilGroove.state === 'look' ? [see('oil-groove', 'Oil groove seen whole at the pin bore')] : []),
  ]
}
