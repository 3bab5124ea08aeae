import type { Locator, Page } from 'playwright-core'

/** The hands of a machinist on an operation's page. */
export interface Bench {
  chooseGauge(name: string | RegExp): Promise<void>
  /** Sets the gauge on the mating part itself, or back to sizes. */
  setOnMate(isSo: boolean): Promise<void>
  cell(title: string): Locator
  /** Takes a cell in hand. */
  goTo(title: string): Promise<void>
  /** Types values from the cell in hand on: Enter moves to the next one by itself. */
  type(values: readonly string[]): Promise<void>
  /** A new pass of the feature in hand. */
  measureAgain(): Promise<void>
  /** The verdict on a requirement, with all that is said of it. */
  verdict(title: string): Locator
  /** Presses a PIN on the pad of a person. */
  pin(person: string, digits: string): Promise<void>
  seeAll(): Promise<void>
}

/** On a phone what is set once lies under a line that opens. */
export async function unfold(page: Page): Promise<void> {
  await page.getByRole('grid').first().waitFor()
  const folded = page.locator('details:not([open]) > summary').filter({ hasText: / in hand|Which gauge|View and keypad/ })
  while (await folded.count() > 0) await folded.first().click()
}

export function benchOf(page: Page): Bench {
  const cell = (title: string) => page.getByRole('textbox', { name: title, exact: true })
  return {
    cell,
    async chooseGauge(name) {
      await unfold(page)
      const gauge = page.getByLabel('Gauge in hand')
      const label = await gauge.locator('option').filter({ hasText: name }).first().textContent()
      await gauge.selectOption({ label: label ?? '' })
    },
    async setOnMate(isSo) {
      await unfold(page)
      await page.getByRole('switch', { name: /set on the mating part/ }).setChecked(isSo)
    },
    async goTo(title) {
      // On a small screen one feature is shown at a time: page forth to the last, then back, until its cell is there.
      for (const way of ['The one after', 'The one before']) {
        const turn = page.getByRole('button', { name: way })
        while (!(await cell(title).isVisible()) && (await turn.isVisible()) && (await turn.isEnabled())) await turn.click()
      }
      await cell(title).click()
    },
    async type(values) {
      for (const [index, value] of values.entries()) {
        // A hand takes longer than a gauge that sends its figure twice, which is asked about.
        if (index > 0 && value === values[index - 1]) await page.waitForTimeout(200)
        await page.keyboard.type(value)
        await page.keyboard.press('Enter')
      }
    },
    async measureAgain() {
      await page.getByRole('region', { name: 'At this cell' }).getByRole('button', { name: 'Measure again' }).click()
    },
    verdict: (title) => page.getByRole('article').filter({ has: page.getByRole('heading', { name: title, exact: true }) }),
    async pin(person, digits) {
      const pad = page.getByRole('group', { name: `PIN of ${person}` })
      for (const digit of digits) await pad.getByRole('button', { name: digit, exact: true }).click()
    },
    async seeAll() {
      const things = page.getByRole('region', { name: 'Things to see' }).getByRole('button', { name: /^●?Seen$/ })
      const count = await things.count()
      for (let index = 0; index < count; index += 1) await things.nth(index).click()
    },
  }
}
