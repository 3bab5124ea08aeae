import { describe, expect, it } from 'vitest'
import { bushing, passOver, pinGauge, placed, reading, tenth } from '../testing/samples.ts'
import { countingAt, countingReadings, supersededAt } from './counting.ts'
import { passToFill, type Taking } from './pass-to-fill.ts'
import { isFull, latestPass, passesOf, withLocal } from './passes.ts'

describe('readings of a pass', () => {
  const pass = passOver({
    readings: [
      reading('a', 'front/along-rod', 1),
      reading('b', 'front/along-rod', 2, { supersedes: 'a', reason: 'slip' }),
      reading('c', 'front/along-rod', 3, { supersedes: 'b', reason: 'slip again' }),
      reading('d', 'rear/along-rod', 9),
    ],
  })

  it('count at the end of their chain of corrections', () => {
    expect(countingReadings(pass.readings).map(({ id }) => id)).toEqual(['c', 'd'])
    expect(countingAt(pass, 'front/along-rod')?.value).toBe(3)
    expect(countingAt(null, 'front/along-rod')).toBeNull()
  })

  it('keep what was corrected in sight, oldest first', () => {
    expect(supersededAt(pass, 'front/along-rod').map(({ id }) => id)).toEqual(['a', 'b'])
  })

  it('fill a pass only when every point has one', () => {
    expect(isFull(bushing, pass)).toBe(true)
    expect(isFull(bushing, passOver({ readings: pass.readings.slice(0, 3) }))).toBe(false)
    expect(isFull(bushing, null)).toBe(false)
  })
})

describe('passes of a feature', () => {
  it('are those of the part that sits in the place now, the latest by number', () => {
    const passes = [
      passOver({ id: 'second', number: 2 }), passOver({ id: 'first' }), passOver({ id: 'other part', partId: 'rod-B', number: 3 }),
      passOver({ id: 'other feature', feature: 'big-end', number: 4 }),
    ]
    expect(passesOf({ placed }, passes, bushing).map(({ id }) => id)).toEqual(['first', 'second'])
    expect(latestPass({ placed }, passes, bushing)?.id).toBe('second')
  })

  it('are none where no part sits', () => {
    expect(latestPass({ placed: [] }, [passOver()], bushing)).toBeNull()
  })
})

describe('what was typed here and is not in the service’s answer yet', () => {
  const local = { pass: passOver(), reading: reading('new', 'front/along-rod', 4 * tenth) }

  it('opens its pass', () => {
    expect(withLocal([], [local])).toEqual([passOver({ readings: [local.reading] })])
  })

  it('lies over the pass that the service knows, and never twice', () => {
    const known = passOver({ readings: [reading('old', 'rear/along-rod', 5 * tenth)] })
    const over = withLocal([known], [local, local])
    expect(over[0]?.readings.map(({ id }) => id)).toEqual(['old', 'new'])
    expect(withLocal(over, [local])).toEqual(over)
  })
})

describe('the pass that a value belongs to', () => {
  const taking: Taking = {
    feature: { ...bushing, state: ['soaked'] }, open: null, isCorrecting: false, latestNumber: 1, partId: 'rod-A', gauge: pinGauge,
    setOn: { partId: 'pin-A', feature: 'diameter' }, setting: null, temperatures: null, material: null, states: new Set(['soaked']), today: '2030-01-01',
  }

  it('is a new one, with gauge, state and mate, before the first value', () => {
    expect(passToFill(taking)).toEqual({
      kind: 'new',
      pass: {
        partId: 'rod-A', feature: 'small-end', gaugeId: 'gauge-1', gaugeMark: 'PG-1', quantity: 'length', standardUncertainty: 635,
        state: ['soaked'], setOn: { partId: 'pin-A', feature: 'diameter' },
        setting: null, temperatures: null, material: null, zero: null, isVoid: false,
      },
    })
  })

  it('is the one begun while gauge and setting stay the same', () => {
    expect(passToFill({ ...taking, open: passOver() })).toMatchObject({ kind: 'open', pass: { id: 'pass-1' } })
  })

  it('is the one with the slip when that is put right, whatever gauge, setting and state are in hand by now', () => {
    const since = { gauge: { ...pinGauge, id: 'other' }, setOn: null, states: new Set<never>(), today: '2031-02-01' }
    expect(passToFill({ ...taking, ...since, open: passOver(), isCorrecting: true })).toMatchObject({ kind: 'open', pass: { id: 'pass-1' } })
    expect(passToFill({ ...taking, gauge: null, open: passOver(), isCorrecting: true })).toMatchObject({ kind: 'open' })
    expect(passToFill({ ...taking, open: passOver(), latestNumber: 2, isCorrecting: true })).toMatchObject({ kind: 'none' })
  })

  it.each<[string, Partial<Taking>, RegExp]>([
    ['no gauge is in hand', { gauge: null }, /Choose the gauge/],
    ['the gauge is past its calibration day', { today: '2031-02-01' }, /calibrated until Fri 31 Jan 2031: take another gauge/],
    ['the gauge measures another quantity', { gauge: { ...pinGauge, quantity: 'torque' } }, /measures torque, not length/],
    ['a state that the feature asks for is not ticked', { states: new Set() }, /Tick first: soaked/],
    ['no part sits in the place', { partId: null }, /No part is in this place/],
    ['another gauge was taken in the middle of a pass', { open: passOver({ gaugeId: 'other', gaugeMark: 'M-4' }) }, /begun with M-4/],
    ['the part was measured again at another step', { open: passOver(), latestNumber: 2 }, /Pass 2 was taken since/],
    ['sizes would mix with clearances', { open: passOver({ setOn: null }) }, /begun with sizes/],
    ['the gauge was set on another size in the middle of a pass',
      { open: passOver(), setting: { size: 23_565_000, temperature: null } }, /another setting of the gauge/],
    ['clearances would mix with sizes', { open: passOver(), setOn: null }, /set on the mating part/],
  ])('is none when %s, and says so', (_, change, sentence) => {
    const found = passToFill({ ...taking, ...change })
    expect(found).toMatchObject({ kind: 'none', sentence: expect.stringMatching(sentence) })
  })

  it('still takes a value on the last day of the calibration', () => {
    expect(passToFill({ ...taking, today: '2031-01-31' }).kind).toBe('new')
  })
})
