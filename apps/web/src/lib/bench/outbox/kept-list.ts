import { merged, type KeptEntry, type OutboxEntry, type OutboxStore } from './outbox-entry.ts'

export interface KeptListWiring<Content> {
  readonly store: OutboxStore<Content>
  /** Waits before the device is asked to keep once more. */
  readonly pause: () => Promise<void>
  readonly changed: () => void
  /** The device was asked to keep an entry: it is safe there and may be sent, or the device refused. */
  readonly asked: () => void
  /** Tells the other tabs to look at the store again, and which entries a person took off. */
  readonly announce: (takenOff: readonly string[]) => void
}

/** The entries as this tab sees them: at once when they are typed, and after a reload from what the device kept. */
export class KeptList<Content> {
  readonly #wiring: KeptListWiring<Content>
  #entries: readonly OutboxEntry<Content>[] = []
  #canKeep = true
  #unreadable = 0
  #isKeeping = false
  /** Counts what was written from here, so that an older look at the device is never taken for the newest. */
  #writes = 0
  /** What the service has and the device has not let go of yet. */
  #arrived: readonly OutboxEntry<Content>[] = []

  constructor(wiring: KeptListWiring<Content>) {
    this.#wiring = wiring
  }

  get entries(): readonly OutboxEntry<Content>[] {
    return this.#entries
  }

  /** Whether the device keeps what is typed. While it does not, nothing more may be accepted. */
  get canKeep(): boolean {
    return this.#canKeep
  }

  /** How many entries lie on the device that a newer version of the program kept. */
  get unreadable(): number {
    return this.#unreadable
  }

  /** Whether an entry is on its way into the store right now. */
  get isKeeping(): boolean {
    return this.#canKeep && this.#unkept() !== undefined
  }

  /** Takes over what lies on the device. @param takenOff what a person dropped in another tab */
  async read(takenOff: readonly string[] = []): Promise<void> {
    this.#withhold(takenOff)
    let kept, writes
    do {
      writes = this.#writes
      kept = await this.#onDevice(() => this.#wiring.store.readAll())
    } while (writes !== this.#writes)
    if (kept === null) return
    this.#unreadable = kept.unreadable
    const arrived = new Set(this.#arrived.map(({ key }) => key))
    this.#set(merged(this.#entries, kept.entries.filter(({ key }) => !arrived.has(key))))
  }

  add(entry: OutboxEntry<Content>): void {
    this.#set([...this.#entries.filter(({ key }) => key !== entry.insteadOf?.key), entry])
    void this.#keep()
  }

  /** What became of an entry, here and on the device; one that was refused or put away stays there with why. */
  async change(key: string, change: Pick<KeptEntry<Content>, 'state' | 'problem' | 'reason'>): Promise<void> {
    this.#replace(key, change)
    const entry = this.#entries.find((one) => one.key === key)
    if (entry === undefined || entry.sequence === null) return
    const { sequence, content } = entry
    await this.#write(() => this.#wiring.store.change({ key, sequence, content, ...change }))
    this.#wiring.announce([])
  }

  /** How many the service has that still lie on the device. */
  get toLetGo(): number {
    return this.#arrived.length
  }

  /** The service has it. It stays on the device until `letGo`: should it go out again under its key, that has no second effect. */
  arrived(key: string): void {
    this.#replace(key, { state: 'stored', problem: null })
    this.#arrived = [...this.#arrived, ...this.#entries.filter((entry) => entry.key === key)]
  }

  /** Takes all that has arrived off the device. @param before what must be done with it first */
  async letGo(before: (contents: readonly Content[]) => Promise<void>): Promise<void> {
    const gone = this.#arrived
    if (gone.length === 0) return
    await before(gone.map(({ content }) => content))
    await this.#write(() => this.#wiring.store.remove(gone.flatMap(({ sequence }) => sequence ?? [])))
    this.#arrived = this.#arrived.filter((entry) => !gone.includes(entry))
    this.#wiring.announce([])
  }

  /** What the service's answer shows by now no longer lies over it. Nothing else is touched. */
  settle(keys: readonly string[]): void {
    this.#withhold(this.#entries.flatMap(({ key, state }) => (state === 'stored' && keys.includes(key) ? [key] : [])))
  }

  /** Clears entries that were put away off the device. Nothing else is touched. */
  async clear(keys: readonly string[]): Promise<void> {
    const away = this.#entries.filter(({ key, state }) => state === 'put-away' && keys.includes(key))
    if (away.length === 0) return
    this.#withhold(away.map(({ key }) => key))
    await this.#write(() => this.#wiring.store.remove(away.flatMap(({ sequence }) => sequence ?? [])))
    this.#wiring.announce(away.map(({ key }) => key))
  }

  /** One after the other, so that the device numbers them in the order of typing. */
  async #keep(): Promise<void> {
    if (this.#isKeeping) return
    this.#isKeeping = true
    for (let next = this.#unkept(); next; next = this.#unkept()) {
      const entry = next
      const sequence = await this.#write(() => this.#wiring.store.keep(entry))
      if (sequence === null) {
        this.#wiring.asked()
        await this.#wiring.pause()
        continue
      }
      this.#replace(entry.key, { sequence, insteadOf: null })
      if (this.#unkept() === undefined) this.#say(true)
      this.#wiring.announce(entry.insteadOf ? [entry.insteadOf.key] : [])
      this.#wiring.asked()
    }
    this.#isKeeping = false
  }

  #unkept(): OutboxEntry<Content> | undefined {
    return this.#entries.find(({ state, sequence }) => state === 'waiting' && sequence === null)
  }

  #write<T>(work: () => Promise<T>): Promise<T | null> {
    this.#writes += 1
    return this.#onDevice(work)
  }

  /** Something done in the store; null, and said to whoever types, when the device refuses it. */
  async #onDevice<T>(work: () => Promise<T>): Promise<T | null> {
    try {
      const done = await work()
      if (this.#unkept() === undefined) this.#say(true)
      return done
    } catch {
      this.#say(false)
      return null
    }
  }

  #say(canKeep: boolean): void {
    if (this.#canKeep === canKeep) return
    this.#canKeep = canKeep
    this.#wiring.changed()
  }

  #withhold(keys: readonly string[]): void {
    if (keys.length > 0) this.#set(this.#entries.filter(({ key }) => !keys.includes(key)))
  }

  #replace(key: string, change: Partial<OutboxEntry<Content>>): void {
    this.#set(this.#entries.map((entry) => (entry.key === key ? { ...entry, ...change } : entry)))
  }

  #set(entries: readonly OutboxEntry<Content>[]): void {
    this.#entries = entries
    this.#wiring.changed()
  }
}
