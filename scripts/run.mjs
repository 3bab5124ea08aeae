import { spawn } from 'node:child_process'
import path from 'node:path'

export const root = path.join(import.meta.dirname, '..')

/**
 * Runs a program in the root folder and keeps what it says. Resolves with its output; rejects with the output as
 * message when its exit code is not 0.
 * @param {string} program
 * @param {readonly string[]} parameters
 * @param {Record<string, string>} [environment] added to our own
 * @returns {Promise<string>}
 */
export function run(program, parameters, environment = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, parameters, {
      cwd: root,
      env: { ...process.env, ...environment },
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32' && !program.endsWith('.exe'),
    })
    let said = ''
    for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', (text) => (said += text))
    child.once('error', reject)
    child.once('close', (code, signal) => {
      if (code === 0) resolve(said)
      else reject(new Error(said.trim() || `${program} ended with ${signal ?? code}`))
    })
  })
}

/** Runs the npm that started us, or else the one on the path. */
export function npm(parameters, environment = {}) {
  const itself = process.env.npm_execpath
  return itself?.endsWith('.js')
    ? run(process.execPath, [itself, ...parameters], environment)
    : run('npm', parameters, environment)
}
