import type { Browser, Page } from 'playwright-core'
import type { Figure } from '../../../packages/domain/bench/figure.ts'
import { percentile } from './percentile.ts'
import { goToHone, sizeNear, takeTablet, type Hone } from './hone.ts'

/**
 * From the key's own time stamp to the paint of what it changed: the count of readings after every Enter, and the verdicts
 * after each that fills a bore.
 */
export async function enterFigures(browser: Browser, hone: Hone): Promise<readonly Figure[]> {
  const page = await takeTablet(browser, hone)
  await goToHone(page, hone)
  const all: number[] = []
  const filling: number[] = []
  for (let bore = 1; bore <= 8; bore += 1) {
    for (let point = 1; point <= 6; point += 1) {
      await page.keyboard.type(sizeNear(hone, all.length))
      const taken = await enter(page, point === 6)
      all.push(taken)
      if (point === 6) filling.push(taken)
    }
  }
  await page.context().close()
  const limit = { kind: 'at most', value: 50 } as const
  return [
    { figure: 'Enter to verdict, 95th percentile, CPU slowed fourfold', value: percentile(all, 0.95), unit: 'ms', limit, comparedWith: `median ${percentile(all, 0.5).toFixed(1)} ms of ${all.length} readings` },
    { figure: 'Enter that fills a bore to its verdicts, 95th percentile, CPU slowed fourfold', value: percentile(filling, 0.95), unit: 'ms', limit, comparedWith: `median ${percentile(filling, 0.5).toFixed(1)} ms of ${filling.length} bores` },
  ]
}

/** Presses Enter and answers how long it took until its effect was painted, in milliseconds. */
async function enter(page: Page, fills: boolean): Promise<number> {
  await page.evaluate(`void (globalThis.taken = new Promise((done) => {
    const watched = () => ${fills}
      ? document.querySelector('section[aria-labelledby="verdicts"]').innerText
      : document.querySelector('section[aria-label="Readings"] [role=grid]').closest('section').querySelector('h2, .tables').innerText
    const before = watched()
    addEventListener('keydown', ({ timeStamp }) => {
      const look = () => requestAnimationFrame(() => {
        // The frame is painted when the task after it runs.
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () => watched() === before ? look() : done(performance.now() - timeStamp)
        port2.postMessage(null)
      })
      look()
    }, { once: true, capture: true })
  }))`)
  await page.keyboard.press('Enter')
  return page.evaluate<number>(`Promise.race([taken, new Promise((_, refuse) =>
    setTimeout(() => refuse(new Error('Enter changed nothing: ' + document.querySelector('main').innerText)), 10_000))])`)
}
