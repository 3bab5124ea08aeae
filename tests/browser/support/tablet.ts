import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** Waits until the pages would open without a network, and show these steps. */
export async function untilOpensWithout(page: Page, steps: readonly { number: number; key: string }[] = []): Promise<void> {
  await page.evaluate('navigator.serviceWorker.ready.then(() => undefined)')
  await expect.poll(() => everythingOn(page).then((lies) => steps
    .filter(({ number, key }) => !lies.includes(`"address":"/api/jobs/${number}/operations/${key}"`))), { timeout: 60_000, interval: 100 }).toEqual([])
}

/** Waits until this many entries of the bench lie on the tablet: a hand is never as fast as a test. */
export async function untilKept(page: Page, count: number): Promise<void> {
  await expect.poll(() => page.evaluate<number>(countKept), { timeout: 60_000, interval: 50 }).toBe(count)
}

/** Runs in the page. */
const countKept = `new Promise((done, fail) => {
  const opening = indexedDB.open('tenths-outbox')
  opening.onerror = () => fail(opening.error)
  opening.onsuccess = () => {
    const counting = opening.result.transaction('work').objectStore('work').count()
    counting.onsuccess = () => { opening.result.close(); done(counting.result) }
  }
})`

/** Everything that a tablet keeps: databases, storages, caches with their headers, and cookies, as one text. */
export async function everythingOn(page: Page): Promise<string> {
  const lies = await page.evaluate(collect)
  return `${lies}\n${JSON.stringify(await page.context().cookies())}`
}

/** Runs in the page. */
const collect = `(async () => {
  const found = [JSON.stringify({ ...localStorage }), JSON.stringify({ ...sessionStorage }), document.cookie]
  for (const { name } of await indexedDB.databases()) {
    const database = await new Promise((done, fail) => {
      const opening = indexedDB.open(name)
      opening.onsuccess = () => done(opening.result)
      opening.onerror = () => fail(opening.error)
    })
    for (const store of database.objectStoreNames) {
      const all = await new Promise((done) => {
        const reading = database.transaction(store).objectStore(store).getAll()
        reading.onsuccess = () => done(reading.result)
      })
      found.push(name + '/' + store + ' ' + JSON.stringify(all))
    }
    database.close()
  }
  for (const name of await caches.keys()) {
    const cache = await caches.open(name)
    for (const request of await cache.keys()) {
      const answer = await cache.match(request)
      found.push(request.url + ' ' + JSON.stringify([...answer.headers]) + (request.url.includes('/_app/') ? '' : ' ' + await answer.text()))
    }
  }
  return found.join('\\n')
})()`
