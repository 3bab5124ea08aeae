import { describe, expect, it } from 'vitest'
import type { FeatureDefinition } from '@tenths/domain'
import { inHandOrder } from './hand-order.ts'

const bore: FeatureDefinition = {
  place: 'block', feature: 'bore-1', title: 'Bore 1', shape: 'hole', quantity: 'length', nominal: null, state: [],
  points: ['top/thrust', 'bottom/thrust', 'bottom/pin', 'top/pin'].map((key) => {
    const [station = '', axis = ''] = key.split('/')
    return { key, station, axis }
  }),
}
const walked = (order: Parameters<typeof inHandOrder>[1]) => inHandOrder(bore, order).points.map(({ key }) => key)

describe('the order a hand moves', () => {
  it('is down one axis and up the other, as planned', () => {
    expect(walked('down-and-up')).toEqual(['top/thrust', 'bottom/thrust', 'bottom/pin', 'top/pin'])
  })
  it('may be another, as this person prefers', () => {
    expect(walked('always-down')).toEqual(['top/thrust', 'bottom/thrust', 'top/pin', 'bottom/pin'])
    expect(walked('depth-by-depth')).toEqual(['top/thrust', 'top/pin', 'bottom/thrust', 'bottom/pin'])
  })
})
