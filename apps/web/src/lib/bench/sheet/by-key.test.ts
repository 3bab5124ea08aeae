import { featureKey } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import { bushing, passOver, placed, reading } from '../testing/samples.ts'
import { openPasses, passesByFeature, readingsByCell } from './by-key.ts'

const key = featureKey(bushing)
const received = passOver({ id: 'received', operationKey: 'measure-rods', readings: [reading('a', 'front/along-rod', 1)] })
const honed = passOver({ id: 'honed', number: 2, readings: [reading('b', 'front/along-rod', 2)] })
const taken = passesByFeature({ placed }, [received, honed], [bushing])

describe('what a step shows of its features', () => {
  it('is the pass that was taken at this step, not one of another step', () => {
    expect(openPasses(taken, 'measure-rods', new Set()).get(key)?.id).toBe('received')
    expect(openPasses(taken, 'hone-small-ends', new Set()).get(key)?.id).toBe('honed')
    expect(openPasses(taken, 'balance', new Set()).size).toBe(0)
  })

  it('is empty again when the feature is to be measured again', () => {
    expect(openPasses(taken, 'hone-small-ends', new Set([key])).size).toBe(0)
  })

  it('is the counting reading of each cell', () => {
    const readings = readingsByCell(openPasses(taken, 'hone-small-ends', new Set()), [bushing])
    expect([...readings].map(([cell, { id }]) => [cell, id])).toEqual([[`${key}@front/along-rod`, 'b']])
  })
})
