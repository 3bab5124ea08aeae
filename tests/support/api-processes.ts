import { spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'

export interface ApiProcess {
  readonly name: string
  readonly port: number
  /** From now on it kills itself between the commit of a command and its answer. */
  dieAfterCommit(): Promise<void>
  /** Ends it at once, as a power cut does. */
  kill(): Promise<void>
  stop(): Promise<void>
}

/** Starts one real API process on the given database; see api-process.ts. */
export async function startApiProcess(databaseUrl: string, name: string): Promise<ApiProcess> {
  const child = spawn(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, 'api-process.ts')], {
    env: { ...process.env, DATABASE_URL: databaseUrl, NAME: name },
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const ended = once(child, 'close')
  child.stdout.setEncoding('utf8')
  const said = async () => String((await Promise.race([once(child.stdout, 'data'), ended.then(() => ['ended'])]))[0]).trim()
  const port = Number(await said())
  if (!Number.isInteger(port)) throw new Error(`${name} ended before it listened.`)
  return {
    name, port,
    async dieAfterCommit() {
      child.stdin.write('die after commit\n')
      await said()
    },
    async kill() {
      child.kill('SIGKILL')
      await ended
    },
    async stop() {
      child.stdin.end()
      await ended
    },
  }
}
