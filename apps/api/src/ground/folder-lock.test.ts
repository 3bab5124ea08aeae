import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { lockFolder } from './folder-lock.ts'
import { livingProcess } from './other-process.ts'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'lock-'))
})
afterEach(() => rm(folder, { recursive: true }))

describe('the lock of a data folder', () => {
  it('is refused while another living process holds it, and free once that one is dead', async () => {
    const other = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60_000)'])
    await once(other, 'spawn')
    const startedAt = livingProcess(other.pid!)!.startedAt
    await writeFile(path.join(folder, 'lock'), JSON.stringify({ process: other.pid, startedAt, token: 'theirs' }))
    await expect(lockFolder(folder)).rejects.toThrow(`in use by process ${other.pid}`)
    other.kill('SIGKILL')
    await once(other, 'exit')
    const release = await lockFolder(folder)
    await release()
  })

  it('is taken over from a process number that now belongs to another program', async () => {
    const parent = { process: process.ppid, startedAt: 'long ago', token: 'theirs' }
    await writeFile(path.join(folder, 'lock'), JSON.stringify(parent))
    const release = await lockFolder(folder)
    expect(JSON.parse(await readFile(path.join(folder, 'lock'), 'utf8'))).toMatchObject({ process: process.pid })
    await release()
    await expect(readFile(path.join(folder, 'lock'))).rejects.toThrow('ENOENT')
  })

  it('is taken over from a lock that was cut off while being written', async () => {
    await writeFile(path.join(folder, 'lock'), '{"proc')
    const release = await lockFolder(folder)
    await release()
  })
})
