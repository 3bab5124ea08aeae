import { randomBytes } from 'node:crypto'
import { link, mkdir, readFile, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { Refusal } from '../refusal.ts'

/** Every secret the program keeps for itself. */
export type SecretName =
  | 'database-superuser'
  | 'database-owner'
  | 'database-service'
  | 'pin-pepper'
  | 'status-link-key'

/**
 * The secret of that name, 32 random bytes in hexadecimal, made when first asked for and kept in
 * `<data folder>/secrets/<name>` (readable by its owner only). Two processes that ask at once get the same one.
 */
export async function secret(dataFolder: string, name: SecretName): Promise<string> {
  const folder = path.join(dataFolder, 'secrets')
  const file = path.join(folder, name)
  const kept = await readIfThere(file)
  if (kept !== undefined) return checked(kept, file)
  await mkdir(folder, { recursive: true, mode: 0o700 })
  // Written aside and linked: the file appears whole or not at all, and never replaces another's.
  const aside = `${file}.${process.pid}.${randomBytes(4).toString('hex')}`
  await writeFile(aside, `${randomBytes(32).toString('hex')}\n`, { mode: 0o600, flush: true })
  try {
    await link(aside, file)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  } finally {
    await rm(aside)
  }
  return checked(await readFile(file, 'utf8'), file)
}

async function readIfThere(file: string): Promise<string | undefined> {
  try {
    return await readFile(file, 'utf8')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined
    throw error
  }
}

function checked(text: string, file: string): string {
  const value = text.trim()
  if (!/^[0-9a-f]{64}$/.test(value)) {
    throw new Refusal(`The secret in ${file} is damaged: put it back from a backup of the data folder.`)
  }
  return value
}
