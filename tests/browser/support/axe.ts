import axe, { type AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'

/** What axe-core finds in the light and in the dark, where nothing but the colours differ. */
export async function axeInBothLights(page: Page): Promise<Record<'light' | 'dark', readonly string[]>> {
  await page.emulateMedia({ colorScheme: 'dark' })
  const dark = await axeFinds(page, ['color-contrast'])
  await page.emulateMedia({ colorScheme: 'light' })
  return { dark, light: await axeFinds(page) }
}

/**
 * What axe-core finds on a page as it stands, its advice on good practice included: the rule, what it says, and where;
 * empty when it finds nothing.
 */
async function axeFinds(page: Page, rules?: readonly string[]): Promise<readonly string[]> {
  // Handed over by the debugger, and so not held up by the page's own rules on scripts.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source)
  const { violations } = await page.evaluate<AxeResults>(
    `axe.run(document, { resultTypes: ['violations']${rules ? `, runOnly: ${JSON.stringify(rules)}` : ''} })`)
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${help} – ${target.join(' ')} – ${failureSummary?.replace(/\s+/g, ' ')}`))
}
