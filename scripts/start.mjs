import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { build, install, prepareClient, refuseOldNode } from './prepare.mjs'
import { root } from './run.mjs'

refuseOldNode()
try {
  await install()
  await prepareClient()
  await build()
} catch (error) {
  process.stderr.write(`${error.message}\n`)
  process.exit(1)
}
// In this very process: signals need no passing on, and there is none in between that could be killed alone.
await import(pathToFileURL(path.join(root, 'apps/api/dist/server.js')).href)
