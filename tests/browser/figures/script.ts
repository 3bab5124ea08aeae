import type { Browser } from 'playwright-core'
import type { Figure } from '../../../packages/domain/bench/figure.ts'
import { takeTablet, type Hone } from './hone.ts'

/** What the step's page fetches of script, compressed as it goes over the wire, by a browser that has never been here. */
export async function scriptFigures(browser: Browser, hone: Hone): Promise<readonly Figure[]> {
  const page = await takeTablet(browser, hone)
  await page.goto(hone.path)
  await page.getByRole('grid').waitFor()
  // What is fetched after the page is there counts, too.
  await page.waitForTimeout(2_000)
  const sizes = await page.evaluate<number[]>(`performance.getEntriesByType('resource')
    .filter(({ name }) => new URL(name).pathname.endsWith('.js')).map(({ encodedBodySize }) => encodedBodySize)`)
  await page.context().close()
  return [{
    figure: 'compressed script that the bench route loads', value: sizes.reduce((sum, size) => sum + size, 0) / 1_000, unit: 'kB',
    limit: { kind: 'at most', value: 120 }, comparedWith: `${sizes.length} files`,
  }]
}
