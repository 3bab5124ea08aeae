import { boltSetLimits } from '../fasteners/set.ts'
import { rodBoltSet } from '../features/references.ts'
import { FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy, say } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

/** How much longer a rod bolt stays when it is released after trial assembly: one that stays long was pulled past its yield. */
export const rodBoltSetFit: FitDefinition = {
  key: 'rod-bolt-set',
  title: 'Rod bolt set',
  critical: true,
  judgedAt: ['take-apart'],
  parameters: [
    parameter('look', 'Look at it over', 'length', boltSetLimits.look, FROM_MEMORY),
    parameter('scrap', 'Scrap over', 'length', boltSetLimits.scrap, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines({ cylinders }, read) {
    const [look, scrap] = [read('look'), read('scrap')]
    return cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Rod ${cylinder} bolt set`,
      quantity: 'length',
      measurand: reading(rodBoltSet(cylinder), 'greatest'),
      rule: {
        kind: 'computed',
        limits: limitsOf({ high: scrap, adviceHigh: look }),
        formula: 'free length released − free length before, at most the limit',
        worked: [`Looked at over ${say(look)}, scrap over ${say(scrap)}; bolts tightened past yield are always new`],
      },
      remedy: { low: null, high: remedy('replace', null, 'Scrap both bolts of this rod, and size it again with the new ones.') },
    }))
  },
}
