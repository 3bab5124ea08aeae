import type { Change, streamEventNames } from '@tenths/contract'
import type pg from 'pg'
import { channelOf } from './announcer.ts'
import { lazyConnection } from './lazy-connection.ts'
import { readPosition, writePosition, type Position } from './position.ts'
import { readAfter, readNow } from './read-events.ts'

/** A browser farther behind than this reads everything anew. */
const MOST_MISSED = 500
const LOOK_EVERY = 1_000

/** One open stream. */
export interface Listener {
  send(event: (typeof streamEventNames)[number], id: string, data: Change | null): void
  end(): void
}

export interface EventHub {
  /** Tells a listener what it missed after the position it names, then everything that comes. Answers how to leave. */
  join(listener: Listener, after: string | null): Promise<() => void>
  close(): Promise<void>
}

/**
 * Reads the events of the shop once for all streams of this process: when a commit is announced, and each second for
 * what nobody announced. Looks and joins take turns, so that no listener misses or repeats anything in between.
 */
export function openHub(pool: pg.Pool, schema: string, onFailure: (error: unknown) => void): EventHub {
  const listeners = new Set<Listener>()
  let position: Position | null = null
  let turn: Promise<void> = Promise.resolve()
  let isLookWaiting = false
  let isClosed = false

  const connection = lazyConnection(pool.options, (client) => {
    client.on('notification', wantLook)
    return client.query(`LISTEN ${client.escapeIdentifier(channelOf(schema))}`)
  })
  const clock = setInterval(() => {
    if (listeners.size > 0) wantLook()
  }, LOOK_EVERY)
  clock.unref()

  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const done = turn.then(work)
    turn = done.then(() => undefined, () => undefined)
    return done
  }

  /** Announcements that come while a look waits for its turn are answered by that look. */
  function wantLook(): void {
    if (isLookWaiting || isClosed) return
    isLookWaiting = true
    void inTurn(look).catch(onFailure)
  }

  async function look(): Promise<void> {
    isLookWaiting = false
    if (listeners.size === 0) return
    // Without announcements the looks of each second still find everything.
    await connection.get().catch(onFailure)
    const now = await readNow(pool)
    if (now === null) return
    if (position === null || position.generation !== now.generation) {
      position = now
      tellAll('resync', null)
      return
    }
    for (;;) {
      const events = await readAfter(pool, position, MOST_MISSED)
      for (const { xid, id, ...change } of events) {
        position = { generation: now.generation, xid, id }
        tellAll('change', change)
      }
      if (events.length < MOST_MISSED) return
    }
  }

  function tellAll(event: 'change' | 'resync', data: Change | null): void {
    if (position === null) return
    const id = writePosition(position)
    for (const listener of listeners) listener.send(event, id, data)
  }

  async function welcome(listener: Listener, after: string | null): Promise<void> {
    if (listeners.size === 0) position = await readNow(pool)
    else await look()
    if (position === null) throw new Error('A signed-in person belongs to a shop.')
    const id = writePosition(position)
    const missed = after === null ? [] : await readMissed(after, position)
    if (missed === null) {
      listener.send('resync', id, null)
    } else {
      for (const { xid, id: number, ...change } of missed) {
        listener.send('change', writePosition({ ...position, xid, id: number }), change)
      }
      listener.send('ready', id, null)
    }
    listeners.add(listener)
  }

  /** What a listener missed; null when that cannot be told. */
  async function readMissed(after: string, until: Position): Promise<Awaited<ReturnType<typeof readAfter>> | null> {
    const from = readPosition(after)
    if (from === null || from.generation !== until.generation) return null
    const missed = await readAfter(pool, from, MOST_MISSED + 1, until)
    return missed.length > MOST_MISSED ? null : missed
  }

  return {
    async join(listener, after) {
      await inTurn(() => welcome(listener, after))
      wantLook()
      return () => void listeners.delete(listener)
    },
    async close() {
      isClosed = true
      clearInterval(clock)
      for (const listener of listeners) listener.end()
      listeners.clear()
      await turn
      await connection.drop()
    },
  }
}
