import type { Locator, Page } from 'playwright-core'

/** Tabs from where the focus is until it stands on the wanted control; throws when it cannot be reached. */
export async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor()
  for (let presses = 0; presses < 150; presses += 1) {
    if (await hasFocus(wanted)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`${String(wanted)} cannot be reached with the Tab key.`)
}

export function hasFocus(wanted: Locator): Promise<boolean> {
  return wanted.evaluate((element) => element === element.ownerDocument.activeElement)
}
