import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'

const root = path.join(import.meta.dirname, '../..')

export type RunningServer = {
  readonly process: ChildProcess
  /** Everything it has printed so far. */
  readonly said: () => string
  /** Resolves with its exit code. */
  readonly ended: Promise<number | null>
}

/** Starts the built server as `npm start` does, with these variables; `folder` is where the program lies. */
export function startServer(environment: Record<string, string>, flags: readonly string[] = [], folder = root): RunningServer {
  const child = spawn(process.execPath, ['apps/api/dist/server.js', ...flags], {
    cwd: folder,
    env: { ...process.env, DATABASE_URL: '', MIGRATE_DATABASE_URL: '', NODE_ENV: 'production', ...environment },
  })
  let said = ''
  for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', (text: string) => (said += text))
  return { process: child, said: () => said, ended: once(child, 'close').then(([code]) => code as number | null) }
}

/** Waits until it answers that it is healthy; throws with what it printed when it ends before. */
export async function untilHealthy(server: RunningServer, port: number, patience = 120_000): Promise<void> {
  const deadline = Date.now() + patience
  while (Date.now() < deadline) {
    if (server.process.exitCode !== null || server.process.signalCode !== null) break
    const answer = await fetch(`http://127.0.0.1:${port}/api/health`).catch(() => undefined)
    if (answer?.status === 200) return
    await wait(50)
  }
  throw new Error(`the server is not healthy: ${server.said()}`)
}
