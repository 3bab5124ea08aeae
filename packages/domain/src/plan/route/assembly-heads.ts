import { headsOf, valveTrainOf } from '../../engine/valves.ts'
import type { RouteContext } from './route-context.ts'
import { minutesFor, see, seeIf, stepsOf } from './drafting.ts'
import type { Step } from './drafting.ts'

const step = stepsOf('assembly')

/** Cam bearings and lifters measured in the block, and the heads put together. From memory, common practice. */
export function valveTrainAssembly({ engine, features, scope, sheets }: RouteContext): readonly Step[] {
  const overhead = valveTrainOf(engine).camshaft === 'overhead'
  return [
    step(
      'cam-bearings',
      'Measure cam bearings in place and lifters in their bores',
      'assembly',
      minutesFor(60, engine.mains.count, 5),
      ['plugs'],
      {
        features: [features.camBearings, features.camJournals, features.lifterBores, features.lifters],
        observations: [
          see('through', 'Camshaft slides through and turns by two fingers'),
          see('drop', 'Every oiled lifter drops and turns under its own weight'),
        ],
        cautions: ['A bearing that was shaved leaves chips: wash again before going on.'],
        when: scope.heads && scope.block && !overhead,
      },
    ),
    step(
      'assemble-heads',
      'Put the heads together',
      'head-bench',
      minutesFor(90, engine.cylinders, 8),
      ['final-wash'],
      {
        features: [
          sheets.has('intake-installed-height') ? features.intakeHeights : [],
          sheets.has('exhaust-installed-height') ? features.exhaustHeights : [],
          sheets.has('intake-spring-load') ? features.intakeLoads : [],
          sheets.has('exhaust-spring-load') ? features.exhaustLoads : [],
          features.springRooms,
        ],
        observations: [
          see('seals', 'Every seal seated, its lip whole'),
          see('locks', 'Both locks of every valve seen in their groove'),
          see('load', 'Load of every spring at its installed height as its sheet says, both written down'),
          see('leak', 'Every port tight'),
          ...seeIf(overhead, 'camshaft', 'Camshaft turns freely in the head, clearance by its maker’s sheet'),
        ],
        cautions: ['Springs hold energy: a lock that slips flies. Eye protection, face out of line.'],
        when: scope.heads,
      },
    ),
  ]
}

/** Heads on the finished short block. From memory, common practice. */
export function headsOn({ engine, features, scope, sheets }: RouteContext): Step {
  return step(
    'install-heads',
    'Heads on, valve train set, engine primed',
    'assembly',
    minutesFor(150, engine.cylinders, 8),
    ['camshaft', 'oil-pump', ...(scope.heads ? ['assemble-heads'] : [])],
    {
      features: [
        features.assembledTurningTorque,
        sheets.has('head-bolt-torque') ? features.headBoltTorques : [],
        sheets.has('head-bolt-angle') ? features.headBoltAngles : [],
        sheets.has('head-bolt-stretch') ? features.headBoltStretches : [],
        sheets.has('intake-lash') ? features.intakeLashes : [],
        sheets.has('exhaust-lash') ? features.exhaustLashes : [],
        features.leakDowns,
      ],
      observations: [
        see('before', 'Turning torque taken before the heads went on'),
        see('gaskets', 'Gaskets the right way up and round, decks dry'),
        see('bolt-holes', 'No oil or water in a blind bolt hole'),
        see('bolts', 'Head bolts tightened in their maker’s order and steps, figures written down'),
        see('lash', 'Lash or preload set and written down'),
        see('primed', 'Oil pressure primed until oil comes to every rocker'),
      ],
      cautions: [
        'Two people lift a head.',
        'Turn by hand through two turns before the first use of a starter.',
        'Air pressure for leak-down turns the crank: hands and tools clear.',
      ],
      signatures: 2,
      lots: headsOf(engine).map((head) => `head-gasket/${head}`),
      when: scope.heads && scope.assembled,
    },
  )
}
