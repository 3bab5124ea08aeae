import { describe, expect, it } from 'vitest'
import { lastLines, type BuildRecord } from './record.ts'

// Only what is looked at here.
const line = (key: string, kind: string, least: number | null = null) => ({ requirement: { key }, verdict: { kind, least }, concession: null })
const record = (...steps: ReturnType<typeof line>[][]) => ({ operations: steps.map((lines) => ({ lines })) }) as unknown as BuildRecord

describe('the fits of a build record', () => {
  it('are each once, as the last step that measured them found them', () => {
    const lines = lastLines(record([line('bore', 'outside', 1), line('pin', 'within', 2)], [line('bore', 'within', 3)], [line('pin', 'not-measured')]))
    expect(lines.map(({ requirement, verdict }) => [requirement.key, verdict.kind, verdict.least]))
      .toEqual([['bore', 'within', 3], ['pin', 'within', 2]])
  })

  it('are not measured where no step measured them', () => {
    expect(lastLines(record([line('bore', 'not-measured')], [line('bore', 'not-measured')])).map(({ verdict }) => verdict.kind)).toEqual(['not-measured'])
  })
})
