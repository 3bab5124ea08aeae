import { describe, expect, it } from 'vitest'
import { base64Of, keptSize } from './shrink.ts'

describe('a photograph that is kept', () => {
  it('keeps its shape, and its longest side is no longer than 1600 dots', () => {
    expect(keptSize(4000, 3000)).toEqual({ width: 1600, height: 1200 })
    expect(keptSize(3000, 4000)).toEqual({ width: 1200, height: 1600 })
    expect(keptSize(800, 600)).toEqual({ width: 800, height: 600 })
    expect(keptSize(10_000, 2)).toEqual({ width: 1600, height: 1 })
  })

  it('travels as base64, whatever its size', async () => {
    const bytes = Uint8Array.from({ length: 100_000 }, (_, index) => index % 256)
    expect(Buffer.from(await base64Of(new Blob([bytes])), 'base64')).toEqual(Buffer.from(bytes))
  })
})
