import { randomBytes } from 'node:crypto'
import { open, readFile, rename, rm, unlink } from 'node:fs/promises'
import path from 'node:path'
import { Refusal } from '../refusal.ts'
import { livingProcess } from './other-process.ts'

type Holder = { readonly process: number; readonly startedAt: string; readonly token: string }

/**
 * Takes the data folder for this process, so that two programs never run one cluster. A lock whose process is
 * dead, a zombie, or another program that was given its number is taken over. Throws a {@link Refusal} when a
 * living process holds it. Returns the function that gives the folder back.
 */
export async function lockFolder(dataFolder: string): Promise<() => Promise<void>> {
  const file = path.join(dataFolder, 'lock')
  const token = randomBytes(8).toString('hex')
  const mine: Holder = { process: process.pid, startedAt: livingProcess(process.pid)?.startedAt ?? '', token }
  for (let attempt = 0; attempt < 5; attempt++) {
    if (await createWhole(file, JSON.stringify(mine))) {
      return async () => {
        if ((await holderOf(file))?.token === token) await unlink(file)
      }
    }
    const holder = await holderOf(file)
    if (holder && holder.process !== process.pid && livingProcess(holder.process)?.startedAt === holder.startedAt) {
      throw new Refusal(
        `The data folder ${dataFolder} is in use by process ${holder.process}: ` +
          'stop that one first, or set DATA_DIR to another folder.',
      )
    }
    await takeAway(file, holder?.token)
  }
  throw new Refusal(`The data folder ${dataFolder} is being taken by another process: try again.`)
}

async function createWhole(file: string, text: string): Promise<boolean> {
  try {
    const handle = await open(file, 'wx', 0o600)
    await handle.writeFile(text)
    await handle.close()
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw error
  }
}

/** Moves a dead lock aside; if a living one slipped in meanwhile, puts that one back. */
async function takeAway(file: string, deadToken: string | undefined): Promise<void> {
  const aside = `${file}.${process.pid}`
  try {
    await rename(file, aside)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return
    throw error
  }
  if ((await holderOf(aside))?.token === deadToken) await rm(aside)
  else await rename(aside, file)
}

async function holderOf(file: string): Promise<Holder | undefined> {
  try {
    return JSON.parse(await readFile(file, 'utf8')) as Holder
  } catch {
    return undefined
  }
}
