import { describe, expect, it } from 'vitest'
import { planInput, v8, v8Parts } from '../../testing/engines.ts'
import { plan } from '../plan.ts'
import type { WorkKind } from '../plan-types.ts'

const whole = (pin: 'floating' | 'pressed', work: WorkKind = 'full-rebuild') => {
  const input = planInput(v8, { ...v8Parts, pin: { ...v8Parts.pin, fit: pin } }, { work })
  const { operations } = plan({
    ...input, options: { ...input.options, alignHone: true, deck: true, oversize: true, crank: 'grind', newRodBolts: true, balance: true },
  })
  return new Map(operations.map(({ key, cautions }) => [key, cautions.join(' ')]))
}

/** What can hurt somebody, and every step at which it can: from memory, common practice. */
const hazards: readonly (readonly [string, RegExp, readonly string[]])[] = [
  ['retaining rings fly', /Retaining rings fly: wear eye protection/, ['pistons-on-rods']],
  ['springs hold energy', /Springs .*eye protection/i, ['tear-down', 'strip-heads', 'assemble-heads']],
  ['engines fall from stands and hoists', /Lift with rated gear and a second person/, ['receive', 'tear-down', 'hand-over']],
  ['a head is heavy', /Two people lift a head/, ['install-heads']],
  ['a crank is heavy', /Two people lower the crank/, ['install-crank']],
  ['rotating spindles take sleeves and fingers', /spindle takes sleeves|Wheel and crank turn|mandrel grabs/i, [
    'deck', 'bore', 'hone-bores', 'grind-crank', 'resize-rods', 'surface-heads',
  ]],
  ['honing and grinding mist', /mist: draw it off/, ['hone-bores', 'grind-crank']],
  ['solvents', /Solvent burns/, ['strip-wash', 'final-wash']],
  ['asbestos gaskets', /asbestos/, ['tear-down']],
  ['caustic on aluminium', /No caustic on aluminium/, ['strip-wash']],
  ['sodium-filled valves', /sodium: never cut/, ['strip-heads', 'cut-seats']],
  ['magnesium chips', /Magnesium chips burn/, ['surface-heads']],
  ['beryllium seats', /beryllium/, ['cut-seats']],
  ['burnt fluoro-rubber', /fluoro-rubber/, ['tear-down']],
  ['bearings spun with compressed air', /never spin a bearing/i, ['strip-wash', 'wash-for-measuring', 'final-wash']],
  ['test pressure', /test pressure/, ['crack-test']],
  ['penetrant and its lamp', /lamp/, ['crack-test']],
  ['a balancer throws what is loose', /Stand clear/, ['balance']],
  ['a loose fastener throws a rod', /left loose throws a rod/, ['final-rod-bolts']],
]

describe('the usual caution stands at the step that needs it', () => {
  it.each(hazards)('%s', (_hazard, words, steps) => {
    const cautions = whole('floating')
    for (const step of steps) expect(cautions.get(step) ?? `no step ${step}`, step).toMatch(words)
  })

  it('hot rods, where pins are pressed', () => {
    expect(whole('pressed').get('pistons-on-rods')).toMatch(/A heated rod burns and sets oil alight.*eye protection/)
    expect(whole('floating').get('pistons-on-rods')).not.toMatch(/heated rod/)
  })
})
