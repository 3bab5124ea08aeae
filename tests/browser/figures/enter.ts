import type { Browser, Page } from 'playwright-core'
import type { Figure } from '../../../packages/domain/bench/figure.ts'
import { oncePainted } from './once-painted.ts'
import { percentile } from './percentile.ts'
import { goToHone, sizeNear, takeTablet, type Hone } from './hone.ts'

/** From one key to the next of somebody who types fast. */
export const keyMilliseconds = 60
/** From one reading to the next: nobody moves a bore gauge faster. */
export const moveMilliseconds = 500

// What shows that an Enter took effect.
const count = `document.querySelector('section[aria-label="Readings"] h2').textContent`
const besideTheGrid = `document.querySelector('section[aria-label="Readings"] ul[aria-label^="Verdicts of"]')?.textContent`
const all = `document.querySelector('section[aria-labelledby="verdicts"]').textContent`

/**
 * From the key's own time stamp to the paint of what it changed: the count of readings after every Enter, and after each that
 * fills a bore its verdicts beside the grid; those of the whole step follow a frame later, and only inform.
 */
export async function enterFigures(browser: Browser, hone: Hone): Promise<readonly Figure[]> {
  const { entered, filling, whole } = await measureBores(browser, hone, keyMilliseconds)
  return [
    figure('Enter to verdict', entered, 'readings', { kind: 'at most', value: 50 }),
    figure('Enter that fills a bore to its verdicts', filling, 'bores', { kind: 'at most', value: 50 }),
    figure('Enter that fills a bore to the verdicts of the whole step', whole, 'bores', null),
  ]
}

/** A gauge types its digits and Enter at once: Enter waits for what the digits began. */
export async function gaugeFigures(browser: Browser, hone: Hone): Promise<readonly Figure[]> {
  const { entered } = await measureBores(browser, hone, 0)
  return [figure('Enter to verdict, digits and Enter at once', entered, 'readings', null)]
}

function figure(name: string, taken: readonly number[], of: string, limit: Figure['limit']): Figure {
  return {
    figure: `${name}, 95th percentile, CPU slowed fourfold`, value: percentile(taken, 0.95), unit: 'ms', limit,
    comparedWith: `median ${percentile(taken, 0.5).toFixed(1)} ms of ${taken.length} ${of}`,
  }
}

interface Taken {
  readonly entered: readonly number[]
  readonly filling: readonly number[]
  readonly whole: readonly number[]
}

async function measureBores(browser: Browser, hone: Hone, delay: number): Promise<Taken> {
  const page = await takeTablet(browser, hone)
  await goToHone(page, hone)
  const entered: number[] = []
  const filling: number[] = []
  const whole: number[] = []
  for (let bore = 1; bore <= 8; bore += 1) {
    for (let point = 1; point <= 6; point += 1) {
      await page.keyboard.type(sizeNear(hone, entered.length), { delay })
      const [first, last] = await enter(page, point === 6 ? [besideTheGrid, all] : [count, count])
      entered.push(first)
      if (point === 6) {
        filling.push(first)
        whole.push(last)
      }
      await page.waitForTimeout(moveMilliseconds)
    }
  }
  await page.context().close()
  return { entered, filling, whole }
}

/** Presses Enter and answers how long it took until each of the texts had changed and was painted, in milliseconds. */
async function enter(page: Page, [first, last]: readonly [string, string]): Promise<readonly [number, number]> {
  await page.evaluate(`void (globalThis.taken = Promise.all([() => ${first}, () => ${last}].map((watched) => new Promise((done) => {
    const before = watched()
    addEventListener('keydown', ({ timeStamp }) => {
      const look = () => ${oncePainted}(() => {
        const now = performance.now()
        if (watched() === before) look()
        else done(now - timeStamp)
      })
      look()
    }, { once: true, capture: true })
  }))))`)
  await page.keyboard.press('Enter')
  return page.evaluate<[number, number]>(`Promise.race([taken, new Promise((_, refuse) =>
    setTimeout(() => refuse(new Error('Enter changed nothing: ' + document.querySelector('main').innerText)), 10_000))])`)
}
