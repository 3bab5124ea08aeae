import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'

/** What is known of a process from outside. `startedAt` tells two processes with one number apart. */
export type OtherProcess = { readonly startedAt: string; readonly program: string }

/**
 * The living process with this number, or undefined. A zombie (ended, but not yet collected by its parent)
 * counts as dead, although the system still answers for its number.
 */
export function livingProcess(id: number): OtherProcess | undefined {
  if (!Number.isSafeInteger(id) || id <= 0) return undefined
  try {
    process.kill(id, 0)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EPERM') return undefined
  }
  return process.platform === 'linux' ? fromProc(id) : fromListing(id)
}

/** proc(5): after the name in parentheses come the state (field 3) and, as field 22, the start in clock ticks. */
function fromProc(id: number): OtherProcess | undefined {
  try {
    const status = readFileSync(`/proc/${id}/stat`, 'utf8')
    const fields = status.slice(status.lastIndexOf(')') + 2).split(' ')
    if (fields[0] === 'Z' || fields[0] === 'X') return undefined
    const program = status.slice(status.indexOf('(') + 1, status.lastIndexOf(')'))
    return { startedAt: fields[19] ?? '', program }
  } catch {
    return undefined
  }
}

function fromListing(id: number): OtherProcess | undefined {
  try {
    if (process.platform === 'win32') {
      const row = execFileSync('tasklist', ['/fo', 'csv', '/nh', '/fi', `PID eq ${id}`], { encoding: 'utf8' })
      const program = /^"([^"]+)"/.exec(row.trim())?.[1]
      return program === undefined ? undefined : { startedAt: '', program }
    }
    const row = execFileSync('ps', ['-o', 'state=,lstart=,comm=', '-p', String(id)], { encoding: 'utf8' }).trim()
    const [, state, startedAt, program] = /^(\S+)\s+(\S+\s+\S+\s+\S+\s+\S+\s+\S+)\s+(.+)$/.exec(row) ?? []
    if (state === undefined || state.startsWith('Z')) return undefined
    return { startedAt: startedAt ?? '', program: program ?? '' }
  } catch {
    return undefined
  }
}
