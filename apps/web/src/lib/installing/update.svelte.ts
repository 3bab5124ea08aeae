import { changes } from '$lib/api/changes.ts'

/** Registers what lets the pages open without a network, and knows when a newer version is there. */
class Update {
  /** A newer version has been fetched while this page was open; it begins with the next load. */
  isReady = $state(false)

  /** Once a page of the shop's people is there. Nothing happens where the browser has no workers (plain HTTP). */
  async begin(): Promise<void> {
    const workers = (navigator as Partial<Navigator>).serviceWorker
    if (workers === undefined) return
    // Registering asks the service, and waits while that is away: meanwhile the page is worked with. What is known is there at once.
    const registration = await workers.getRegistration() ?? await workers.register('/service-worker.js').catch(() => undefined)
    // A page that is only now loaded has nothing to lose: the version that waits begins at once.
    registration?.waiting?.postMessage('take over')
    if (registration === undefined) return
    this.#watch(registration)
    registration.addEventListener('updatefound', () => this.#watch(registration))
    // A page that stays open for weeks never asks by itself. A service that is back after a break may be a newer one.
    const ask = (): void => void registration.update().catch(() => undefined)
    document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'visible') ask() })
    changes.hear((news) => { if (news === null) ask() })
    ask()
  }

  /** The first worker of all is no newer version; one that comes beside another is, whether or not that one has this page. */
  #watch({ installing, active }: ServiceWorkerRegistration): void {
    if (active === null) return
    // Where no page is the former one's, it is active before anybody is told that it was installed.
    installing?.addEventListener('statechange', () => {
      if (installing.state !== 'redundant') this.isReady = true
    })
  }
}

export const update = new Update()
