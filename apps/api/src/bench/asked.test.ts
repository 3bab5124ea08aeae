import type { Operation } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import { requireAnswer } from './asked.ts'

const operation = {
  title: 'Measure block', observations: [{ key: 'soak', title: 'Side by side', asks: { kind: 'since', minutes: 120 } }],
} as unknown as Operation
const now = new Date('2030-01-01T12:00:00Z')
const said = (since: string) => () => requireAnswer(operation, { item: 'soak', outcome: 'seen', note: '', since }, now, 'observations.0')

describe('a time that a step asks for', () => {
  it('is long enough ago although the tablet’s clock is some seconds ahead', () => {
    expect(said('2030-01-01T10:00:20Z')).not.toThrow()
  })

  it('is refused when it is a minute too short, with how long it has been', () => {
    expect(said('2030-01-01T10:01:00Z')).toThrow('119 of 120 minutes have passed')
  })
})
