import { describe, expect, it } from 'vitest'
import { homeOf, safeNext } from './home.ts'

describe('where a person goes after signing in', () => {
  it('is where the work lies', () => {
    expect([homeOf(['counter', 'owner']), homeOf(['machinist', 'counter']), homeOf(['machinist'])]).toEqual(['/desk', '/counter', '/bench'])
  })

  it('is never another site', () => {
    expect(safeNext('/counter/jobs/7?x=1')).toBe('/counter/jobs/7?x=1')
    for (const elsewhere of ['https://other.example', '//other.example', '/\\other.example', 'counter', null]) {
      expect(safeNext(elsewhere)).toBeNull()
    }
  })
})
