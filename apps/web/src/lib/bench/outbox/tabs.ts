/** The tabs of one device: they share what is kept, one of them sends at a time, and each hears what another changed. */
export class Tabs {
  readonly #channel = new BroadcastChannel('tenths-outbox')

  /** @param heard called when another tab changed what is kept, with what a person took off there */
  constructor(heard: (takenOff: readonly string[]) => void) {
    this.#channel.onmessage = ({ data }) => heard(data as readonly string[])
  }

  announce(takenOff: readonly string[]): void {
    this.#channel.postMessage(takenOff)
  }

  /** Without locks (plain HTTP) two tabs may send the same value: it has one effect, because both carry its key. */
  async alone<T>(work: () => Promise<T>): Promise<T> {
    const locks = (navigator as Partial<Navigator>).locks
    return locks === undefined ? work() : await locks.request('tenths-outbox', work) as T
  }
}
