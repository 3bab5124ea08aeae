/// <reference types="@sveltejs/kit" />
/// <reference lib="webworker" />
import { base, build, files, version } from '$service-worker'

/**
 * Lets the pages of the shop's people open without a network. Their pages are one shell, the same for everybody and
 * empty: what it shows comes from the API, or from what the bench has kept. The customers' status page and the API are
 * left alone. A new version waits until a page is loaded (see update.ts); what was typed lies elsewhere and is untouched.
 */
const worker = globalThis as unknown as ServiceWorkerGlobalScope
const cacheName = `pages-${version}`
const shell = `${base}/bench`
const assets = new Set([...build, ...files])
/** After this long without an answer the kept shell is shown, in milliseconds. */
const patience = 4_000

/** The Service Workers standard’s static routes, which not every browser has. */
type InstallEvent = ExtendableEvent & {
  addRoutes?(rule: { condition: { urlPattern: URLPattern }; source: 'network' }): Promise<void>
}

worker.addEventListener('install', (event) => {
  event.waitUntil(Promise.all([keepAssets(), passByApi(event)]))
})

worker.addEventListener('activate', (event) => {
  event.waitUntil(clearOldest().then(() => worker.clients.claim()))
})

worker.addEventListener('message', (event) => {
  if (event.data === 'take over') void worker.skipWaiting()
})

worker.addEventListener('fetch', (event) => {
  const { request } = event
  const url = new URL(request.url)
  if (request.method !== 'GET' || url.origin !== worker.location.origin || isLeftAlone(url.pathname)) return
  if (request.mode === 'navigate') event.respondWith(openPage(request))
  else if (assets.has(url.pathname) || url.pathname.includes('/_app/immutable/')) event.respondWith(readAsset(request))
})

/** The customers' page, the API, and whatever the browser itself looks for. */
function isLeftAlone(pathname: string): boolean {
  return ['/s/', '/api/', '/service-worker.js'].some((beginning) => pathname.startsWith(`${base}${beginning}`))
}

/** Where the browser can be told, the API's requests do not even reach the worker, which would let them pass. */
async function passByApi(event: InstallEvent): Promise<void> {
  if (event.addRoutes === undefined) return
  const urlPattern = new URLPattern({ pathname: `${base}/api/*` })
  await event.addRoutes({ condition: { urlPattern }, source: 'network' }).catch(() => undefined)
}

async function keepAssets(): Promise<void> {
  const cache = await caches.open(cacheName)
  await cache.addAll([...assets])
  const answer = await fetch(shell, { cache: 'no-store' })
  if (!answer.ok) throw new Error(`The shell answered ${answer.status}.`)
  await cache.put(shell, answer)
}

/** Pages that are open may still ask for what belongs to the version before this one: that stays for now. */
async function clearOldest(): Promise<void> {
  const own = (await caches.keys()).filter((name) => name.startsWith('pages-'))
  const kept = new Set([cacheName, ...own.filter((name) => name !== cacheName).slice(-1)])
  await Promise.all(own.filter((name) => !kept.has(name)).map((name) => caches.delete(name)))
}

/** The server's page while it answers, so that a new version is met at once; else the shell. */
async function openPage(request: Request): Promise<Response> {
  const answer = fetch(request)
  // Its own shell: among all caches the one of the version before would be found first.
  const kept = await (await caches.open(cacheName)).match(shell)
  if (kept === undefined) return answer
  const late = new Promise<Response>((resolve) => { setTimeout(() => resolve(kept), patience) })
  return Promise.race([answer.then((page) => (page.status >= 502 ? kept : page)).catch(() => kept), late])
}

/** Their names change with their content: what is kept is right. */
async function readAsset(request: Request): Promise<Response> {
  return (await caches.match(request)) ?? fetch(request)
}
