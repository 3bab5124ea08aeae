import { describe, expect, it } from 'vitest'
import { readTagText, tagPath } from './tags.ts'

describe('the code on a tag', () => {
  it('is read back as it was printed, whatever mark the part has', () => {
    for (const mark of [null, 'R3', 'PN 12', 'left/rear', '50%', 'ß']) {
      expect(readTagText(`https://shop.example:4310${tagPath(1001, mark)}`)).toEqual({ jobNumber: 1001, mark, host: 'shop.example:4310' })
      expect(readTagText(tagPath(7, mark))).toEqual({ jobNumber: 7, mark, host: null })
    }
  })

  it('is never a value that a gauge types, nor a code of something else', () => {
    for (const text of ['', '4.0305', '-0.0002', '1001', '4006381333931', 'https://maker.example/parts/7', '/jobs/', '/jobs/1/parts/%E0%A4%A', 'R3']) {
      expect(readTagText(text), text).toBeNull()
    }
  })
})
