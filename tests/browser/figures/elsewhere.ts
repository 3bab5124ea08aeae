import type { Browser, Page } from 'playwright-core'
import type { Figure } from '../../../packages/domain/bench/figure.ts'
import { keyMilliseconds, moveMilliseconds } from './enter.ts'
import { goToHone, sizeNear, takeTablet, type Hone } from './hone.ts'
import { oncePainted } from './once-painted.ts'
import { percentile } from './percentile.ts'

const count = 48

/** From Enter on one tablet to the value on another that has the same step open, both slowed. */
export async function elsewhereFigures(browser: Browser, hone: Hone): Promise<readonly Figure[]> {
  const one = await takeTablet(browser, hone)
  const other = await takeTablet(browser, hone)
  await goToHone(one, hone)
  await goToHone(other, hone)
  const taken: number[] = []
  for (let reading = 0; reading < count; reading += 1) {
    const cell = await one.evaluate<string>('document.activeElement.ariaLabel')
    const seen = whenShown(other, cell)
    await one.keyboard.type(sizeNear(hone, reading), { delay: keyMilliseconds })
    await one.evaluate(`void (globalThis.at = new Promise((done) =>
      addEventListener('keydown', ({ timeStamp }) => done(performance.timeOrigin + timeStamp), { once: true, capture: true })))`)
    await one.keyboard.press('Enter')
    taken.push(await seen - await one.evaluate<number>('globalThis.at'))
    await one.waitForTimeout(moveMilliseconds)
  }
  await one.context().close()
  await other.context().close()
  return [{
    figure: 'a reading on another signed-in screen, 95th percentile, both slowed fourfold', value: percentile(taken, 0.95), unit: 'ms',
    limit: { kind: 'at most', value: 300 }, comparedWith: `median ${percentile(taken, 0.5).toFixed(0)} ms of ${taken.length} readings`,
  }]
}

/**
 * When a cell of the grid has a value and it is painted, as the clock on the wall goes, in milliseconds. It looks only when
 * a field is filled: looking at each frame would take from the tablets the processor whose speed is measured.
 */
function whenShown(page: Page, cell: string): Promise<number> {
  return page.evaluate<number>(`new Promise((done, refuse) => {
    const field = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')
    const isFilled = () => [...document.querySelectorAll('[role=grid] input')].some(({ ariaLabel, value }) => ariaLabel === '${cell}' && value !== '')
    const putBack = () => Object.defineProperty(HTMLInputElement.prototype, 'value', field)
    const late = setTimeout(() => { putBack(); refuse(new Error('${cell} never arrived')) }, 20_000)
    const look = () => ${oncePainted}(() => {
      const now = performance.timeOrigin + performance.now()
      if (!isFilled()) return
      putBack()
      clearTimeout(late)
      done(now)
    })
    Object.defineProperty(HTMLInputElement.prototype, 'value', { ...field, set(value) { field.set.call(this, value); look() } })
  })`)
}
