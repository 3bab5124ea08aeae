import { describe, expect, it } from 'vitest'
import { readGaugeKey } from './gauge-keys.ts'

const pressed = (key: string, more = {}) => ({ key, ctrlKey: false, metaKey: false, altKey: false, ...more })
const nowhere = { takesText: false, isElsewhere: false }

describe('what a digital gauge types', () => {
  it('goes to the cell in hand wherever the cursor is', () => {
    expect([...'4.03+-/'].map((key) => readGaugeKey(pressed(key), nowhere, false)))
      .toEqual([...'4.03+-/'].map((text) => ({ kind: 'type', text })))
  })
  it('is left to a text that somebody is typing, and to an open dialogue', () => {
    expect(readGaugeKey(pressed('4'), { ...nowhere, takesText: true }, false)).toBeNull()
    expect(readGaugeKey(pressed('4'), { ...nowhere, isElsewhere: true }, false)).toBeNull()
  })
  it('ends with Enter; Enter alone presses the button that has the focus', () => {
    expect(readGaugeKey(pressed('Enter'), nowhere, true)).toEqual({ kind: 'enter' })
    expect(readGaugeKey(pressed('Enter'), nowhere, false)).toBeNull()
  })
  it('takes no letters and no shortcuts but undo', () => {
    expect(readGaugeKey(pressed('a'), nowhere, true)).toBeNull()
    expect(readGaugeKey(pressed('4', { ctrlKey: true }), nowhere, false)).toBeNull()
    expect(readGaugeKey(pressed('z', { ctrlKey: true }), nowhere, false)).toEqual({ kind: 'undo' })
  })
})
