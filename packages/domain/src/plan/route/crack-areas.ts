import { isBoosted, isSustained } from '../../engine/duty.ts'
import { headsOf } from '../../engine/valves.ts'
import type { Inspection, InspectionMethod } from '../plan-types.ts'
import type { RouteContext } from './route-context.ts'

/** Iron and steel: particles gather at a crack that the field crosses. */
const ferrous: readonly InspectionMethod[] = ['magnetic-particle', 'dye-penetrant', 'ultrasonic', 'eddy-current']
/** Aluminium is not magnetic. */
const light: readonly InspectionMethod[] = ['dye-penetrant', 'eddy-current', 'ultrasonic']

/**
 * Which areas of which parts are tested for cracks and leaks. Forced or sustained duty asks for more of them:
 * caps, and both ends of the crank. From memory, common practice; the shop edits it.
 */
export function crackAreas(context: RouteContext): readonly Inspection[] {
  const { scope } = context
  return [
    ...(scope.block ? blockAreas(context) : []),
    ...(scope.crank ? crankAreas(context) : []),
    ...(scope.rods ? rodAreas(context) : []),
    ...(scope.heads ? headAreas(context) : []),
  ]
}

function isHardUse({ duty }: RouteContext): boolean {
  return isBoosted(duty) || isSustained(duty)
}

function blockAreas(context: RouteContext): readonly Inspection[] {
  const area = (key: string, title: string, methods: readonly InspectionMethod[] = ferrous): Inspection => ({
    key: `block-${key}`, title: `Block: ${title}`, place: 'block', methods,
  })
  return [
    area('webs', 'main webs'),
    area('bores', 'bores'),
    area('deck', 'deck and bolt holes'),
    ...(isHardUse(context) ? [area('caps', 'main caps and their registers')] : []),
    ...(context.engine.cooling === 'water' ? [area('jacket', 'water jacket under pressure', ['pressure'])] : []),
  ]
}

function crankAreas(context: RouteContext): readonly Inspection[] {
  const area = (key: string, title: string): Inspection => ({
    key: `crank-${key}`, title: `Crankshaft: ${title}`, place: 'crankshaft', methods: ferrous,
  })
  return [
    area('fillets', 'fillets of every journal'),
    area('oil-holes', 'oil holes'),
    ...(isHardUse(context) ? [area('ends', 'snout, keyway and flange')] : []),
  ]
}

function rodAreas({ parts, cylinders }: RouteContext): readonly Inspection[] {
  return cylinders.map(({ cylinder }) => ({
    key: `rod-${cylinder}`, title: `Rod ${cylinder}: beam, bolt seats and small end`, place: `rod/${cylinder}`,
    methods: parts.rod.material === 'aluminium' ? light : ferrous,
  }))
}

function headAreas({ engine }: RouteContext): readonly Inspection[] {
  return headsOf(engine).flatMap((head): readonly Inspection[] => [
    {
      key: `head-${head}`, title: `Head ${head}: between seats, at plug holes and guides`, place: `head/${head}`,
      methods: ['dye-penetrant', 'magnetic-particle', 'eddy-current', 'ultrasonic'],
    },
    ...(engine.cooling === 'water'
      ? [{
          key: `head-${head}-jacket`, title: `Head ${head}: water jacket under pressure`, place: `head/${head}`,
          methods: ['pressure' as const],
        }]
      : []),
  ])
}
