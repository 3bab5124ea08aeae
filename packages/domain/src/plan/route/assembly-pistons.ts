import type { RouteContext } from './route-context.ts'
import { minutesFor, see, stepsOf } from './drafting.ts'
import type { Step } from './drafting.ts'
import { lotPlaces } from './lot-places.ts'

const step = stepsOf('assembly')

/**
 * Pistons on rods, rings on pistons, both into the block. From memory, common practice; the shop edits it.
 */
export function pistonAssembly(context: RouteContext): readonly Step[] {
  const { engine, features, sheets } = context
  return [
    pistonsOnRods(context),
    step(
      'install-pistons',
      'Rings on and clocked, pistons in',
      'assembly',
      minutesFor(90, engine.cylinders, 8),
      ['install-crank', 'pistons-on-rods'],
      {
        observations: ringObservations(context),
        lots: lotPlaces(features, ['top-ring', 'second-ring', 'oil-ring', 'rod-bearing']),
        cautions: ['Guide every rod past its crankpin.', 'Keep fingers clear of the ring compressor.'],
      },
    ),
    step(
      'final-rod-bolts',
      'Rod bolts, final',
      'assembly',
      minutesFor(60, engine.cylinders, 8),
      ['install-pistons'],
      {
        features: [
          sheets.has('rod-bolt-torque') ? features.rodBoltTorques : [],
          sheets.has('rod-bolt-angle') ? features.rodBoltAngles : [],
          // Without any sheet the stretch is written down all the same: the record is the shop's defence.
          otherwiseTightened(sheets) && !sheets.has('rod-bolt-stretch') ? [] : features.rodBoltStretches,
        ],
        observations: [
          see('lubricant', 'Bolt lubricant is the maker’s, written down'),
          see('caps', 'Cap numbers match their rods'),
          see('side-play', 'Side play felt on every rod'),
        ],
        lots: lotPlaces(features, ['rod-bolts']),
        cautions: ['A bolt left loose throws a rod: tighten to the maker’s sheet, two people.'],
        signatures: 2,
      },
    ),
  ]
}

function otherwiseTightened(sheets: RouteContext['sheets']): boolean {
  return sheets.has('rod-bolt-torque') || sheets.has('rod-bolt-angle')
}

function pistonsOnRods({ engine, parts, cylinders, features }: RouteContext): Step {
  const pressed = parts.pin.fit === 'pressed'
  return step(
    'pistons-on-rods',
    pressed ? 'Heat rods and press pins' : 'Pistons on rods, retainers in',
    'assembly',
    minutesFor(60, engine.cylinders, 8),
    ['final-wash'],
    {
      observations: [
        ...cylinders.map((cylinder) =>
          see(`way-round-${cylinder.cylinder}`, wayRound(cylinder, parts.piston.hasFrontMark)),
        ),
        ...(pressed
          ? [see('centred', 'Every pin centred, piston swings freely')]
          : [see('retainers', 'Every retainer felt home in its groove, full circle')]),
      ],
      lots: lotPlaces(features, ['piston', 'piston-pin']),
      cautions: pressed
        ? [
            'A heated rod burns and sets oil alight: two pairs of hands, one try for each pin.',
            'Wear eye protection.',
          ]
        : ['Retaining rings fly: wear eye protection.'],
      signatures: 2,
    },
  )
}

function wayRound(cylinder: RouteContext['cylinders'][number], hasFrontMark: boolean): string {
  const chamfer = cylinder.wideChamferFaces
  const facts = [
    ...(hasFrontMark ? ['front mark to the front'] : []),
    ...(chamfer === null ? [] : [`wide chamfer to the ${chamfer}`]),
  ]
  const words = facts.length === 0 ? 'rod and piston the way they came off' : facts.join(', ')
  return `Cylinder ${cylinder.cylinder}: ${words}`
}

function ringObservations({ supportRail }: RouteContext) {
  return [
    ...(supportRail ? [see('support-rail', 'Support rail in first, dimple down in the opening')] : []),
    see('expander', 'Expander’s ends butted, never overlapped'),
    see('rings-up', 'Marks and bevels up as the rings’ sheet says'),
    see('free', 'Every ring turns freely by hand'),
    see('clocked', 'Neighbouring gaps never in line, off the major thrust side'),
    see('bore-marks', 'Every ring in the bore that it was fitted to'),
    see('turning', 'Turning effort felt after every piston'),
  ]
}
