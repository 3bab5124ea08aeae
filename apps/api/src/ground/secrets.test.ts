import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { secret } from './secrets.ts'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'secrets-'))
})
afterEach(() => rm(folder, { recursive: true }))

describe('secrets', () => {
  it('keeps a secret once made, readable by its owner only', async () => {
    const first = await secret(folder, 'pin-pepper')
    expect(await secret(folder, 'pin-pepper')).toBe(first)
    expect(await secret(folder, 'status-link-key')).not.toBe(first)
    expect((await stat(path.join(folder, 'secrets/pin-pepper'))).mode & 0o777).toBe(0o600)
  })

  it('gives the same secret to all who ask at once', async () => {
    const answers = await Promise.all(Array.from({ length: 20 }, () => secret(folder, 'pin-pepper')))
    expect(new Set(answers).size).toBe(1)
  })

  it('refuses a damaged secret instead of making a new one', async () => {
    await secret(folder, 'pin-pepper')
    await writeFile(path.join(folder, 'secrets/pin-pepper'), 'abc')
    await expect(secret(folder, 'pin-pepper')).rejects.toThrow(/damaged/)
  })
})
