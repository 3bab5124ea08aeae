import path from 'node:path'
import { root, run } from './run.mjs'

/** Generated files that are kept under version control, for their readers. */
export const KEPT = ['docs/openapi.json']

/**
 * Writes the database client from prisma/schema.prisma. Prisma wants a schema engine of its own before it starts and
 * would fetch one; generating never calls it, so any program that exists will do.
 */
export async function generateClient() {
  await run(process.execPath, ['node_modules/prisma/build/index.js', 'generate', '--no-hints'], {
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
    CHECKPOINT_DISABLE: '1',
  })
}

/** Writes every file of {@link KEPT}. */
export async function generateKept() {
  await run(process.execPath, ['--import', 'tsx', path.join(root, 'apps/api/src/http/write-openapi.ts')])
}

if (process.argv[1] === import.meta.filename) {
  await generateClient()
  await generateKept()
}
