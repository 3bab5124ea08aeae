import { existsSync } from 'node:fs'
import { readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import { fileURLToPath } from 'node:url'

export type Migration = { readonly name: string; readonly sql: string }

/** The folder `prisma/` of this checkout, from the sources as well as from the bundle. */
export const prismaFolder = findUpwards(path.dirname(fileURLToPath(import.meta.url)), 'prisma/schema.prisma')

/** All migrations that belong to this version of the program, oldest first. */
export async function readMigrations(): Promise<readonly Migration[]> {
  const folder = path.join(prismaFolder, 'migrations')
  const entries = await readdir(folder, { withFileTypes: true })
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name)
  return Promise.all(
    names.sort().map(async (name) => ({ name, sql: await readFile(path.join(folder, name, 'migration.sql'), 'utf8') })),
  )
}

function findUpwards(from: string, file: string): string {
  for (let folder = from; ; folder = path.dirname(folder)) {
    if (existsSync(path.join(folder, file))) return path.dirname(path.join(folder, file))
    if (folder === path.dirname(folder)) throw new Error(`${file} is not found above ${from}`)
  }
}
