import { execFile } from 'node:child_process'
import { existsSync } from 'node:fs'
import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { promisify } from 'node:util'
import { Refusal } from '../refusal.ts'
import type { Unprivileged } from './unprivileged.ts'

/**
 * Makes a cluster in a folder that does not exist yet. It is made aside and renamed, so that one which was cut
 * off half way is never taken for a whole one. Collation is Postgres's own C.UTF-8: the same on every system.
 */
export async function createCluster(wanted: {
  readonly cluster: string
  readonly password: string
  readonly initdb: string
  readonly runner: Unprivileged
  readonly unsafe: boolean
}): Promise<void> {
  const { cluster, runner } = wanted
  if (existsSync(path.join(cluster, 'PG_VERSION'))) return
  const folder = path.dirname(cluster)
  const prefix = `${path.basename(cluster)}.being-made`
  const remains = (await readdir(folder)).filter((name) => name.startsWith(prefix))
  await Promise.all(remains.map((name) => rm(path.join(folder, name), { recursive: true })))

  const aside = path.join(folder, `${prefix}.${process.pid}`)
  const passwordFile = `${aside}.password`
  await mkdir(aside, { mode: 0o700 })
  await writeFile(passwordFile, `${wanted.password}\n`, { mode: 0o600 })
  runner.own(aside)
  runner.own(passwordFile)
  const flags = [
    `--pgdata=${aside}`, '--username=superuser', `--pwfile=${passwordFile}`, '--auth=scram-sha-256',
    '--encoding=UTF8', '--locale=C', '--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--data-checksums',
    '--no-instructions', ...(wanted.unsafe ? ['--no-sync'] : []),
  ]
  const [program, parameters] = runner.command(wanted.initdb, flags)
  try {
    await promisify(execFile)(program, parameters, { ...runner.options, cwd: aside })
  } catch (error) {
    const said = (error as { stderr?: string }).stderr?.trim().split('\n').slice(-3).join(' / ')
    throw new Refusal(`The database could not be made in ${cluster}: ${said || (error as Error).message}`)
  } finally {
    await rm(passwordFile)
  }
  await rename(aside, cluster)
}
