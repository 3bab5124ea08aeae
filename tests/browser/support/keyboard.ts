import type { Locator, Page } from 'playwright-core'
import { describeFocus, unreached } from './in-page.mjs'

/** Tabs from where the focus is until it stands on the wanted control; throws when it cannot be reached, or is lost to sight on the way. */
export async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor()
  for (let presses = 0; presses < 150; presses += 1) {
    if (await hasFocus(wanted)) return
    await page.keyboard.press('Tab')
    const trouble = (await page.evaluate(describeFocus))?.trouble ?? []
    if (trouble.length > 0) throw new Error(trouble.join('; '))
  }
  throw new Error(`${String(wanted)} cannot be reached with the Tab key.`)
}

export function hasFocus(wanted: Locator): Promise<boolean> {
  return wanted.evaluate((element) => element === element.ownerDocument.activeElement)
}

/** Tabs once round the page: whatever the Tab key does not reach, and wherever the focus cannot be seen. */
export async function tabRound(page: Page): Promise<readonly string[]> {
  await page.evaluate(unreached)
  const troubles: string[] = []
  for (let presses = 0; presses < 300; presses += 1) {
    await page.keyboard.press('Tab')
    const focus = await page.evaluate(describeFocus)
    if (focus?.isBack) break
    troubles.push(...focus?.trouble ?? [])
  }
  return [...troubles, ...(await page.evaluate(unreached)).map((one) => `${one} is not reached`)]
}
