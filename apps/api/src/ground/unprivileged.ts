import { spawnSync, type SpawnOptions } from 'node:child_process'
import { chmodSync, chownSync, statSync } from 'node:fs'
import { Refusal } from '../refusal.ts'

/**
 * How a program is started that refuses to run as root. `command` turns a program and its arguments into what is
 * really started; `options` are added to those of spawn; `own` gives a file or folder to the one it will run as.
 */
export type Unprivileged = {
  readonly command: (program: string, parameters: readonly string[]) => readonly [string, string[]]
  readonly options: Pick<SpawnOptions, 'uid' | 'gid'>
  readonly own: (file: string) => void
}

const asOurselves: Unprivileged = {
  command: (program, parameters) => [program, [...parameters]],
  options: {},
  own: () => undefined,
}

/**
 * An ordinary user starts programs as itself. Root starts them in a user namespace where it counts as nobody
 * (no account needed, and every folder of root's stays open to it), or, where namespaces are not allowed, as the
 * user `postgres`, who must be able to enter `folder` and run `program`: else a {@link Refusal}.
 */
export function unprivileged(folder: string, program: string): Unprivileged {
  if (process.getuid?.() !== 0) return asOurselves
  const namespace = ['--user', '--map-user=65534', '--map-group=65534', '--']
  if (spawnSync('unshare', [...namespace, program, '--version']).status === 0) {
    return { ...asOurselves, command: (name, parameters) => ['unshare', [...namespace, name, ...parameters]] }
  }
  const options = postgresUser()
  // The data folder may be passed through, not listed: what is secret in it has a mode of its own.
  chmodSync(folder, statSync(folder).mode | 0o011)
  for (const [cannot, test, file] of [
    ['enter', 'cd "$1"', folder],
    ['run', '"$1" --version', program],
  ] as const) {
    if (spawnSync('/bin/sh', ['-c', test, 'sh', file], { ...options, cwd: '/' }).status === 0) continue
    throw new Refusal(
      `Postgres does not run as root, and the user postgres cannot ${cannot} ${file}: ` +
        `${cannot === 'enter' ? 'set DATA_DIR to a folder' : 'put the program into a folder'} that every user may ` +
        'enter (such as one under /srv), or start as an ordinary user.',
    )
  }
  return { ...asOurselves, options, own: (file) => chownSync(file, options.uid, options.gid) }
}

function postgresUser(): { uid: number; gid: number } {
  const look = (flag: string) => Number(spawnSync('id', [flag, 'postgres'], { encoding: 'utf8' }).stdout?.trim() || NaN)
  if (Number.isNaN(look('-u'))) {
    spawnSync('useradd', ['--system', '--user-group', '--no-create-home', '--shell', '/usr/sbin/nologin', 'postgres'])
  }
  const user = { uid: look('-u'), gid: look('-g') }
  if (Number.isNaN(user.uid) || Number.isNaN(user.gid)) {
    throw new Refusal('Postgres does not run as root, and no user postgres could be made: start as an ordinary user.')
  }
  return user
}
