import type { Role } from '@tenths/contract'
import { describe, expect, it } from 'vitest'
import { homeOf, safeNext } from './home.ts'

describe('where a person goes after signing in', () => {
  it('is where the work lies', () => {
    const home = (...roles: Role[]) => homeOf({ roles, device: null })
    expect([home('counter', 'owner'), home('machinist', 'counter'), home('machinist')]).toEqual(['/desk', '/counter', '/bench'])
    expect(homeOf({ roles: ['owner'], device: { id: 'd', name: 'Tablet', benchId: 'b' } })).toBe('/bench/b')
  })

  it('is never another site', () => {
    expect(safeNext('/counter/jobs/7?x=1')).toBe('/counter/jobs/7?x=1')
    for (const elsewhere of ['https://other.example', '//other.example', '/\\other.example', 'counter', null]) {
      expect(safeNext(elsewhere)).toBeNull()
    }
  })
})
