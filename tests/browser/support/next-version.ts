import { cp, mkdir, mkdtemp, readdir, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'

const root = path.join(import.meta.dirname, '../../..')
const builtPages = 'apps/web/build'

export interface NextVersion {
  /** Where the program lies, as `startServer` takes it. */
  readonly folder: string
  /** What the name of every file of its pages ends with, before the ending. */
  readonly sign: string
  remove(): Promise<void>
}

/**
 * The built program beside itself as a newer one, as an update leaves it: it calls itself another version, and every file
 * of its pages has another name, so that whoever asks it for a file of the version before is told that there is none.
 */
export async function nextVersion(): Promise<NextVersion> {
  const folder = await mkdtemp(path.join(tmpdir(), 'tenths-next-'))
  const sign = '-next'
  for (const name of ['node_modules', 'prisma', 'prisma.config.ts', 'package.json']) await symlink(path.join(root, name), path.join(folder, name))
  await mkdir(path.join(folder, 'apps'))
  await cp(path.join(root, 'apps/api'), path.join(folder, 'apps/api'), { recursive: true, verbatimSymlinks: true })
  await cp(path.join(root, builtPages), path.join(folder, builtPages), { recursive: true })
  await renameAll(path.join(folder, builtPages), sign)
  return { folder, sign, remove: () => rm(folder, { recursive: true, force: true }) }
}

async function renameAll(pages: string, sign: string): Promise<void> {
  const files = (await readdir(pages, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile())
  const { version } = JSON.parse(await readFile(path.join(pages, 'client/_app/version.json'), 'utf8')) as { version: string }
  const named = files.filter(({ parentPath, name }) => parentPath.includes('/immutable/') && /\.(js|css)$/.test(name))
  const later = (name: string): string => name.replace(/\.(js|css)$/, `${sign}.$1`)
  const names = new Map(named.map(({ name }) => [name, later(name)]))
  const any = new RegExp([...names.keys(), version].map((name) => name.replaceAll('.', '\\.')).join('|'), 'g')
  for (const { parentPath, name } of files) {
    const file = path.join(parentPath, name)
    // What was packed beforehand is of the version before; it is served unpacked instead.
    if (/\.(br|gz|map)$/.test(name)) await rm(file)
    else if (/\.(js|css|json)$/.test(name)) {
      const text = await readFile(file, 'utf8')
      await writeFile(file, text.replaceAll(any, (found) => names.get(found) ?? `${version}0`))
      if (names.has(name) && parentPath.includes('/immutable/')) await rename(file, path.join(parentPath, later(name)))
    }
  }
}
