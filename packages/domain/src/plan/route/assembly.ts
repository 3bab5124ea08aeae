import type { RouteContext } from './route-context.ts'
import { minutesFor, see, seeIf, stageRoute, stepsOf } from './drafting.ts'
import type { StageRoute } from './route-context.ts'
import { pistonAssembly } from './assembly-pistons.ts'
import { lotPlaces } from './lot-places.ts'
import { headsOn, valveTrainAssembly } from './assembly-heads.ts'

const step = stepsOf('assembly')

/** Washed again and put together for good. From memory, common practice; the shop edits it. */
export function assemblyRoute(context: RouteContext): StageRoute {
  const { engine, features, sheets, scope } = context
  return stageRoute([
    step('final-wash', 'Final wash', 'wash', minutesFor(75, engine.cylinders, 8), ['take-apart'], {
      observations: [
        see('galleries', 'Galleries open and brushed, seen through'),
        ...seeIf(scope.block, 'white-cloth', 'White cloth comes out of every bore clean'),
        see('bagged', 'Dried, oiled and bagged, no lint'),
      ],
      cautions: [
        'Wear eye protection when blowing out; never spin a bearing with compressed air.',
        'Solvent burns and its vapour stuns: air, gloves, no flame.',
      ],
    }),
    step(
      'plugs',
      'Cam bearings, gallery plugs, dowels',
      'assembly',
      minutesFor(50, engine.mains.count, 5),
      ['final-wash'],
      {
        observations: [
          see('cam-turns', 'Camshaft turns freely in its bearings'),
          see('oil-holes', 'Every oil hole in line with its bearing’s'),
          see('plugs', 'Gallery plugs in, counted and sealed'),
          see('dowels', 'Dowels in'),
        ],
        signatures: 2,
      },
    ),
    ...valveTrainAssembly(context),
    step(
      'install-crank',
      'Crank in, mains torqued',
      'assembly',
      minutesFor(75, engine.mains.count, 5),
      ['cam-bearings'],
      {
        features: [
          sheets.has('main-bolt-torque') ? features.mainBoltTorques : [],
          sheets.has('main-bolt-angle') ? features.mainBoltAngles : [],
          features.finalEndPlay,
          features.crankTurningTorque,
        ],
        observations: [
          see('shell-holes', 'Every shell’s oil hole in line, lugs seated'),
          see('caps', 'Caps on their own place, arrows to the front'),
          see('thrust', 'Thrust faces seated before the last torque'),
          see('bolts', 'Main bolts tightened to their maker’s figure, lubricant written down'),
          see('rear-seal', 'Rear seal’s lip the right way'),
        ],
        lots: lotPlaces(features, ['main-bearing']),
        cautions: ['Two people lower the crank: no knock on the thrust faces.'],
        signatures: 2,
      },
    ),
    ...pistonAssembly(context),
    step('camshaft', 'Camshaft and timing set', 'assembly', 60, ['final-rod-bolts'], {
      features: [features.camEndPlay],
      observations: [
        see('marks', 'Timing marks in line'),
        see('degreed', 'Centreline degreed against the card'),
        ...seeIf(features.camEndPlay.length === 0, 'end-play', 'Camshaft end play by its maker’s sheet, written down'),
      ],
      signatures: 2,
    }),
    step('oil-pump', 'Oil pump, pick-up, pan', 'assembly', 40, ['final-rod-bolts'], {
      features: [features.pickUpToPan],
      observations: [
        see('bolts', 'Pump and pick-up bolts locked'),
        see('rags', 'Every rag is out of the ports'),
      ],
    }),
    headsOn(context),
    step(
      'final-inspection',
      'Independent final inspection, seal',
      'inspection',
      30,
      ['install-heads'],
      {
        features: scope.heads ? [] : [features.assembledTurningTorque],
        observations: [
          see('record', 'Build record complete'),
          see('photographs', 'Photographs taken'),
          see('openings', 'Every opening closed, engine bagged'),
        ],
        cautions: ['Not by whoever built it.'],
        signatures: 2,
        when: scope.assembled,
      },
    ),
    step(
      'parts-inspection',
      'Independent inspection of the parts, seal',
      'inspection',
      20,
      ['final-inspection'],
      {
        observations: [
          see('record', 'Record of the work complete'),
          see('photographs', 'Photographs taken'),
          see('bagged', 'Every part oiled, closed and bagged'),
        ],
        cautions: ['Not by whoever did the work.'],
        signatures: 2,
        when: !scope.assembled,
      },
    ),
  ])
}
