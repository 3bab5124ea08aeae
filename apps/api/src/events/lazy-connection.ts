import pg from 'pg'

/** One connection of its own, made when it is first needed and again after it was lost. */
export interface LazyConnection {
  get(): Promise<pg.Client>
  drop(): Promise<void>
}

/** `greet` runs once on each new connection before anybody else uses it. */
export function lazyConnection(
  options: pg.PoolOptions, greet: (client: pg.Client) => Promise<unknown> = async () => undefined,
): LazyConnection {
  let current: Promise<pg.Client> | null = null

  function open(): Promise<pg.Client> {
    const client = new pg.Client(options)
    const opening = client.connect().then(() => greet(client)).then(() => client)
    const forget = (): void => {
      if (current === opening) current = null
    }
    client.on('error', forget)
    client.on('end', forget)
    opening.catch(forget)
    return opening
  }

  return {
    get() {
      current ??= open()
      return current
    },
    async drop() {
      const dropped = current
      current = null
      await dropped?.then((client) => client.end()).catch(() => undefined)
    },
  }
}
