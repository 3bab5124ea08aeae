import { run } from './run.mjs'

/**
 * Writes the database client from prisma/schema.prisma. Prisma wants a schema engine of its own before it starts and
 * would fetch one; generating never calls it, so any program that exists will do.
 */
export async function generate() {
  await run(process.execPath, ['node_modules/prisma/build/index.js', 'generate', '--no-hints'], {
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
    CHECKPOINT_DISABLE: '1',
  })
}

if (import.meta.main ?? process.argv[1] === import.meta.filename) await generate()
