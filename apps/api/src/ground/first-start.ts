import { access, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { FastifyInstance } from 'fastify'
import { describeDemo, loadDemo, type DemoSummary } from '../../../../prisma/demo/load.ts'
import { dayIn } from '../jobs/calendar.ts'
import { createSetupLink } from '../people/set-up.ts'

/** What the first start needs to know. */
export interface FirstStart {
  readonly app: FastifyInstance
  readonly dataFolder: string
  /** `--empty`: no demo shop is loaded. */
  readonly empty: boolean
  /** Says a line while something takes long. */
  readonly say: (line: string) => void
}

/**
 * Fills an empty service, with the demo shop or with a one-time link for its owner, and answers the lines to print about
 * who can sign in. A demo that was cut short goes on where it stopped.
 */
export async function prepareShop({ app, dataFolder, empty, say }: FirstStart): Promise<readonly string[]> {
  await app.ready()
  const shop = await app.shop.prisma.shop.findFirst({ select: { isDemo: true } })
  const unfinished = path.join(dataFolder, 'demo-unfinished')
  if (shop === null && empty) return linkLines(app)
  if (shop === null || (shop.isDemo && await exists(unfinished))) {
    await writeFile(unfinished, '')
    say('Loading the demo shop, the first time only …')
    const today = dayIn('UTC', app.shop.now())
    const summary = await loadDemo({ app, today, onProgress: (line) => say(`  ${line}`) })
    await rm(unfinished)
    return demoLines(summary)
  }
  return shop.isDemo ? demoLines(await describeDemo({ app })) : []
}

async function linkLines(app: FastifyInstance): Promise<string[]> {
  const link = await createSetupLink(app.shop.pool, app.shop.now())
  return link === null ? [] : [`Set the shop up at  {address}${link.path}`, '                    (once, within 48 hours)']
}

function demoLines({ people, statusPath }: DemoSummary): string[] {
  const widest = Math.max(...people.map(({ signInName }) => signInName.length))
  return [
    ...(statusPath === null ? [] : [`A customer's link   {address}${statusPath}`]),
    'Demo sign-ins       name, password, PIN, roles',
    ...people.map(({ signInName, password, pin, roles }) =>
      `                    ${signInName.padEnd(widest)}  ${password}  ${pin}  ${roles.join(', ')}`),
  ]
}

async function exists(file: string): Promise<boolean> {
  return access(file).then(() => true, () => false)
}
