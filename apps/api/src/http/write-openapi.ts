import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { prismaFolder } from '../database/migrations.ts'
import { openapi } from './openapi.ts'

/** Writes docs/openapi.json; `npm run generate` calls it, and a check compares the result with what is kept. */
const root = path.join(prismaFolder, '..')
const { version } = JSON.parse(await readFile(path.join(root, 'package.json'), 'utf8')) as { version: string }
await writeFile(path.join(root, 'docs/openapi.json'), `${JSON.stringify(openapi(version), null, 2)}\n`)
