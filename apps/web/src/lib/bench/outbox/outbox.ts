import { noNetwork, ProblemError } from '../../api/problem.ts'
import { KeptList } from './kept-list.ts'
import { isPassing, stopsAll, type OutboxEntry, type OutboxStore, type Refusal } from './outbox-entry.ts'

export interface OutboxWiring<Content, Answer> {
  readonly store: OutboxStore<Content>
  /** @throws ProblemError as `call` does */
  readonly send: (content: Content, key: string) => Promise<Answer>
  /** Who is signed in: only what this person typed goes out. @throws ProblemError when nobody is */
  readonly whoSends: () => Promise<string>
  readonly typedBy: (content: Content) => string
  /** What must arrive in order among itself. */
  readonly laneOf: (content: Content) => string
  /** Whether something must also wait for an earlier one that is not of its lane. */
  readonly mustFollow: (content: Content, earlier: Content) => boolean
  /** Runs the work while no other tab of this device sends. */
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>
  /** Waits before the next attempt, for ever when null; resolves early when somebody asks to send now. */
  readonly pause: (milliseconds: number | null) => Promise<void>
  /** Waits as long as one who measures may take to the next value. */
  readonly rest: () => Promise<void>
  /** Called with what the service has just taken. */
  readonly stored: (content: Content, answer: Answer) => void
  /** Called with what the service has taken since, before the device lets go of it. */
  readonly beforeLetGo: (contents: readonly Content[]) => Promise<void>
  /** Whether a refusal says only that something else must come first: then it keeps its place and waits for that. */
  readonly comesLater: (content: Content, refusal: Refusal) => boolean
  readonly changed: (now: OutboxState<Content>) => void
  /** Tells the other tabs to look again, and which entries a person took off. */
  readonly announce: (takenOff: readonly string[]) => void
}

export interface OutboxState<Content> {
  readonly entries: readonly OutboxEntry<Content>[]
  /** Why nothing gets through at the moment; null while it does. */
  readonly trouble: ProblemError | null
  /** Whether the device keeps what is typed. While it does not, nothing more may be accepted. */
  readonly canKeep: boolean
  /** Entries on this device that only a newer version of the program can read. */
  readonly unreadable: number
}

const firstPause = 1_000
const longestPause = 15_000
/** After so many that arrived without a rest the device lets go of them, and another tab has its turn. */
const mostAtOnce = 20

/**
 * Sends what was typed, once the device has kept it, in the order of typing within its lane. A refused entry stays visible
 * and lets the next pass; nothing is ever dropped: a person puts it right, or puts it away with a reason.
 */
export class Outbox<Content, Answer> {
  readonly #wiring: OutboxWiring<Content, Answer>
  readonly #list: KeptList<Content>
  #trouble: ProblemError | null = null
  /** Who was signed in when something was last sent; null before that. */
  #who: string | null = null
  #isRunning = false
  /** Ends a pause that only one lane needs, or a rest, when there is something to send. */
  #hurry: () => void = () => undefined

  constructor(wiring: OutboxWiring<Content, Answer>) {
    this.#wiring = wiring
    this.#list = new KeptList({
      store: wiring.store,
      pause: () => wiring.pause(longestPause),
      changed: () => this.#tell(),
      asked: () => this.#goOn(),
      announce: wiring.announce,
    })
  }

  /** Looks at what the device keeps, after a reload or when another tab says so, and goes on sending. */
  async look(takenOff: readonly string[] = []): Promise<void> {
    await this.#list.read(takenOff)
    this.#goOn()
  }

  /** Another person may have signed in: what that one typed before goes out too. */
  async lookAs(who: string): Promise<void> {
    this.#who = who
    await this.look()
  }

  /** Takes an entry in at once; the refused one that it corrects goes as soon as this one is kept. */
  add(key: string, content: Content, insteadOf: OutboxEntry<Content> | null = null): void {
    this.#list.add({ key, sequence: null, content, state: 'waiting', problem: null, reason: null, insteadOf })
    // Its turn is asked for while the device still writes.
    void this.#run()
  }

  /** Gives an entry that was refused or put away another try, with the key it had: only success is ever stored under a key. */
  async sendAgain(key: string): Promise<void> {
    await this.#list.change(key, { state: 'waiting', problem: null, reason: null })
    this.#goOn()
  }

  /** Has an entry not sent, or not again: it stays on the device with the reason. */
  async putAway(key: string, reason: string): Promise<void> {
    const entry = this.#list.entries.find((one) => one.key === key)
    if (entry === undefined || entry.state === 'stored') return
    await this.#list.change(key, { state: 'put-away', problem: entry.problem, reason })
  }

  /** Takes what the service's answer shows by now off the list. */
  settle(keys: readonly string[]): void {
    this.#list.settle(keys)
  }

  /** Clears what was put away off the device, for good. */
  clear(keys: readonly string[]): Promise<void> {
    return this.#list.clear(keys)
  }

  /** Sends what there may be now, without waiting for a rest or a pause to end. */
  #goOn(): void {
    this.#hurry()
    void this.#run()
  }

  async #run(): Promise<void> {
    if (this.#isRunning) return
    this.#isRunning = true
    let pause = firstPause
    while (this.#next(new Set()) || this.#list.isKeeping) {
      this.#say(await this.#wiring.alone(() => this.#round()))
      if (this.#trouble === null) {
        pause = firstPause
        continue
      }
      // Time alone signs nobody in.
      const paused = this.#wiring.pause(this.#trouble.code === 'not-signed-in' ? null : pause)
      await (stopsAll(this.#trouble) ? paused : Promise.race([paused, this.#somethingNew()]))
      pause = Math.min(pause * 2, longestPause)
    }
    this.#isRunning = false
    // What is left waits for another person, or for nothing.
    if (this.#trouble !== null) this.#say(null)
  }

  /** Sends all that can go out, and what comes until there is a rest; the trouble that kept something back. */
  async #round(): Promise<ProblemError | null> {
    try {
      this.#who = await this.#wiring.whoSends()
      await this.#list.read()
      return await this.#sendAll()
    } catch (error) {
      return asProblem(error)
    } finally {
      await this.#list.letGo(this.#wiring.beforeLetGo)
    }
  }

  async #sendAll(): Promise<ProblemError | null> {
    const held = new Set<string>()
    let last: ProblemError | null = null
    while (this.#list.toLetGo < mostAtOnce) {
      const next = this.#next(held)
      if (next === undefined) {
        if (!await this.#comesMore(last)) break
        continue
      }
      const trouble = await this.#attempt(next)
      if (trouble === null) continue
      if (stopsAll(trouble)) return trouble
      held.add(this.#wiring.laneOf(next.content))
      last = trouble
    }
    return last
  }

  /** Whether there may be more to send in this turn: whoever measures goes on, and need not wait for another turn. */
  async #comesMore(trouble: ProblemError | null): Promise<boolean> {
    if (this.#list.isKeeping) {
      await this.#somethingNew()
      return true
    }
    if (trouble !== null || this.#list.toLetGo === 0) return false
    return Promise.race([this.#wiring.rest().then(() => false), this.#somethingNew().then(() => true)])
  }

  /** Until the device has been asked to keep something more. */
  #somethingNew(): Promise<void> {
    return new Promise((done) => { this.#hurry = done })
  }

  /** One attempt; the trouble of the way when it must be made again. */
  async #attempt({ key, content }: OutboxEntry<Content>): Promise<ProblemError | null> {
    try {
      const answer = await this.#wiring.send(content, key)
      this.#wiring.stored(content, answer)
      this.#list.arrived(key)
      if (this.#trouble !== null) this.#say(null)
      return null
    } catch (error) {
      const problem = asProblem(error)
      if (isPassing(problem) || this.#wiring.comesLater(content, problem)) return problem
      await this.#list.change(key, { state: 'refused', problem: refusalOf(problem), reason: null })
      return null
    }
  }

  /** The first entry that may go out now: kept, typed by who is signed in, not behind one that is held up. */
  #next(held: ReadonlySet<string>): OutboxEntry<Content> | undefined {
    const lanes = new Set(held)
    const heldUp: Content[] = []
    return this.#waiting().find(({ content }) => {
      const lane = this.#wiring.laneOf(content)
      if (!lanes.has(lane) && !heldUp.some((earlier) => this.#wiring.mustFollow(content, earlier))) return true
      lanes.add(lane)
      heldUp.push(content)
      return false
    })
  }

  /** What the device has kept, done by who is signed in, in its order. */
  #waiting(): readonly OutboxEntry<Content>[] {
    return this.#list.entries.filter(({ state, sequence, content }) => state === 'waiting' && sequence !== null
      && (this.#who === null || this.#wiring.typedBy(content) === this.#who))
  }

  #say(trouble: ProblemError | null): void {
    this.#trouble = trouble
    this.#tell()
  }

  #tell(): void {
    this.#wiring.changed({
      entries: this.#list.entries, trouble: this.#trouble, canKeep: this.#list.canKeep, unreadable: this.#list.unreadable,
    })
  }
}

/** Whatever goes wrong on the way, a request that was cut off included, is no word about the content. */
function asProblem(error: unknown): ProblemError {
  return error instanceof ProblemError ? error : noNetwork()
}

/** A refusal as the device keeps it: where fields are blamed and no form is there to say so, it says their sentences. */
function refusalOf({ code, status, message, fields }: ProblemError): Refusal {
  return { code, status, message: code === 'body-invalid' ? Object.values(fields).join(' ') || message : message }
}
