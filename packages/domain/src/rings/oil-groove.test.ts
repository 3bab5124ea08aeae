import { describe, expect, it } from 'vitest'
import { inches } from '../testing/engines.ts'
import { oilGroove } from './oil-groove.ts'

// Derived examples: compression height 1.125 in and a 0.927 in pin leave 0.6615 in above the pin bore's edge.
const base = { compressionHeight: inches(1.125), pinBore: inches(0.927) }

/** Lands and grooves from the top: land, top groove, land, second groove, land, oil groove, in inches. */
function pack(
  ...[land, top, secondLand, second, oilLand, oil]: [number, number, number, number, number, number]
) {
  return [
    { ring: 'top' as const, upperFlank: inches(land), width: inches(top) },
    { ring: 'second' as const, upperFlank: inches(land + top + secondLand), width: inches(second) },
    {
      ring: 'oil' as const,
      upperFlank: inches(land + top + secondLand + second + oilLand),
      width: inches(oil),
    },
  ]
}
const thick = pack(0.25, 0.0625, 0.17, 0.0625, 0.12, 0.1875)
const thin = pack(0.2, 0.0472, 0.14, 0.0472, 0.1, 0.1181)

describe('the oil groove', () => {
  it('of a thick ring pack is broken by 0.191 in', () => {
    expect(oilGroove({ ...base, pinBoreMouth: inches(0.927), grooves: thick })).toEqual({
      state: 'broken',
      margin: inches(-0.191),
    })
  })

  it('of a thin ring pack is whole by 0.0090 in, little enough to be looked at', () => {
    expect(oilGroove({ ...base, pinBoreMouth: inches(0.927), grooves: thin })).toEqual({
      state: 'look',
      margin: inches(0.009),
    })
  })

  it('of the same pack is broken by 0.011 in where the mouth is 0.020 in larger a side', () => {
    expect(oilGroove({ ...base, pinBoreMouth: inches(0.967), grooves: thin })).toEqual({
      state: 'broken',
      margin: inches(-0.011),
    })
  })

  it('is unknown while nobody has measured the mouth, never whole', () => {
    expect(oilGroove({ ...base, pinBoreMouth: null, grooves: thin })).toEqual({
      state: 'unknown',
      margin: null,
    })
  })

  it('is broken without measuring the mouth where the plain bore opens it already', () => {
    expect(oilGroove({ ...base, pinBoreMouth: null, grooves: thick }).state).toBe('broken')
  })

  it('is whole with more than 0.010 in to spare', () => {
    const taller = { ...base, compressionHeight: inches(1.126) }
    expect(oilGroove({ ...taller, pinBoreMouth: inches(0.927), grooves: thin })).toEqual({
      state: 'whole',
      margin: inches(0.01),
    })
  })
})
