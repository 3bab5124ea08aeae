import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { livingProcess } from './other-process.ts'

/** No system gives a process this number: Postgres takes it for a dead one. */
const NOBODY = 99_999_999

/** What a running Postgres wrote into its cluster: its process and the port it answers on. */
export type Postmaster = { readonly process: number; readonly port: number }

/**
 * The living Postgres of this cluster by its own `postmaster.pid`, or undefined. A file left behind by one that
 * is dead, a zombie, or whose number now belongs to another program is marked as dead, because Postgres itself
 * would take that process for its own and refuse to start. The file is not deleted: by its other lines Postgres
 * sees whether orphaned backends still hold the cluster's shared memory.
 */
export async function livingPostmaster(cluster: string): Promise<Postmaster | undefined> {
  const file = path.join(cluster, 'postmaster.pid')
  let lines: string[]
  try {
    lines = (await readFile(file, 'utf8')).split('\n')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined
    throw error
  }
  const number = Math.abs(Number(lines[0]))
  if (livingProcess(number)?.program.includes('postgres')) return { process: number, port: Number(lines[3]) }
  if (number !== NOBODY) await writeFile(file, [String(NOBODY), ...lines.slice(1)].join('\n'))
  return undefined
}
