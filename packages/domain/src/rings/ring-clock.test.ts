import fc from 'fast-check'
import { expect, it } from 'vitest'
import { plan } from '../plan/plan.ts'
import { anyEngine } from '../testing/any-engine.ts'
import { planInput, v8, v8Parts } from '../testing/engines.ts'
import { orientations } from '../layout/orientation.ts'
import { ringClocks } from './ring-clock.ts'

const input = planInput(v8, v8Parts)

it('keeps every gap of every cylinder of any engine off its thrust faces, its pin and its neighbours', () => {
  fc.assert(fc.property(anyEngine, (engine) => {
    const clocks = ringClocks({ input: { ...input, engine }, orientation: orientations(engine) })
    expect(clocks).toHaveLength(engine.cylinders)
    for (const { gaps, faults } of clocks) {
      expect(gaps.length).toBeGreaterThanOrEqual(5)
      expect(faults).toEqual([])
    }
  }))
})

it('turns the clock over with the crank', () => {
  const of = (rotation: 'clockwise' | 'counterclockwise') => {
    const engine = { ...v8, rotation }
    return ringClocks({ input: { ...input, engine }, orientation: orientations(engine) })[0]!
  }
  const [right, left] = [of('clockwise'), of('counterclockwise')]
  expect([right.majorThrustHour, left.majorThrustHour]).toEqual([3, 9])
  expect(left.gaps.map(({ angle }) => (360_000 - angle) % 360_000)).toEqual(right.gaps.map(({ angle }) => angle))
})

it('clocks a support rail where the pin bore opens the oil groove, and no ring that the piston has no groove for', () => {
  const open = { ...v8Parts.piston, compressionHeight: (v8Parts.piston.compressionHeight - 12_000_000) as typeof v8Parts.piston.compressionHeight }
  const gapsOf = (piston: typeof v8Parts.piston) =>
    ringClocks({ input: { ...input, parts: { ...v8Parts, piston } }, orientation: plan(input).orientation })[0]!.gaps.map(({ gap }) => gap)
  expect(gapsOf(v8Parts.piston)).not.toContain('support-rail')
  expect(gapsOf(open)).toContain('support-rail')
  const twoRings = { ...v8Parts.piston, grooves: v8Parts.piston.grooves.filter(({ ring }) => ring !== 'second') }
  expect(gapsOf(twoRings)).not.toContain('second-ring')
})
