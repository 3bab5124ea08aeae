import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { generateClient } from './generate.mjs'
import { npm, root, run } from './run.mjs'

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)

/** Ends the process with a sentence when this Node is too old to go on. */
export function refuseOldNode() {
  if (major > 20 || (major === 20 && minor >= 19)) return
  process.stderr.write(`Node ${process.versions.node} is too old: install Node 20.19 or later.\n`)
  process.exit(1)
}

/** Installs the packages when those in node_modules are not the ones package-lock.json names. */
export async function install() {
  if (isInstalled()) return
  say('Installing packages')
  // Prisma's own package would otherwise try to fetch an engine that this project does not use.
  await npm(['ci', '--no-audit', '--no-fund'], { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath })
}

/** Compares with the list that npm leaves in node_modules; packages for other systems are allowed to be missing. */
function isInstalled() {
  const read = (file) => JSON.parse(readFileSync(path.join(root, file), 'utf8')).packages
  const there = path.join(root, 'node_modules/.package-lock.json')
  if (!existsSync(there)) return false
  const wanted = Object.entries(read('package-lock.json')).filter(([name]) => name.includes('node_modules/'))
  const found = read('node_modules/.package-lock.json')
  return wanted.every(([name, { version, integrity, optional }]) => {
    const one = found[name]
    return one ? one.version === version && one.integrity === integrity : optional === true
  })
}

/** Writes the database client when the schema has changed. */
export async function prepareClient() {
  await whenChanged('client', ['prisma/schema.prisma', 'package-lock.json'], 'apps/api/src/database/generated/client.ts', generateClient)
}

/** Builds pages and server when their sources have changed. */
export async function build() {
  const shared = ['packages', 'package-lock.json']
  const esbuild = () => run(process.execPath, ['apps/api/build.mjs'])
  const vite = () => npm(['run', 'build', '--workspace=@tenths/web'])
  await Promise.all([
    whenChanged('pages', ['apps/web', ...shared], 'apps/web/build/handler.js', vite),
    whenChanged('server', ['apps/api', 'prisma', ...shared], 'apps/api/dist/server.js', esbuild),
  ])
}

async function whenChanged(what, sources, result, make) {
  const stamp = path.join(root, 'node_modules/.cache/tenths', what)
  const now = fingerprint(sources)
  if (existsSync(path.join(root, result)) && existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return
  say(`Building ${what}`)
  await make()
  mkdirSync(path.dirname(stamp), { recursive: true })
  writeFileSync(stamp, now)
}

const LEFT_OUT = new Set(['node_modules', 'build', 'dist', '.svelte-kit', 'generated'])

/** One hash over names and contents of all files below these paths. */
function fingerprint(sources) {
  const hash = createHash('sha256').update(process.versions.node)
  const add = (file) => hash.update(path.relative(root, file)).update('\0').update(readFileSync(file)).update('\0')
  const walk = (folder) => {
    const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))
    for (const entry of entries) {
      if (LEFT_OUT.has(entry.name) || entry.name.includes('.test.')) continue
      if (entry.isDirectory()) walk(path.join(folder, entry.name))
      else if (entry.isFile()) add(path.join(folder, entry.name))
    }
  }
  for (const source of sources) {
    const absolute = path.join(root, source)
    if (statSync(absolute).isDirectory()) walk(absolute)
    else add(absolute)
  }
  return hash.digest('hex')
}

function say(sentence) {
  process.stdout.write(`${sentence} …\n`)
}
