import { once } from 'node:events'
import { createServer } from 'node:net'

/** A port on loopback that nobody listens on at this moment. */
export async function freePort(): Promise<number> {
  const server = createServer()
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const address = server.address()
  server.close()
  await once(server, 'close')
  if (address === null || typeof address === 'string') throw new Error('a TCP server has no port')
  return address.port
}

/** Whether one could listen there now. Rejects for any reason other than a taken port. */
export async function isFree(port: number, host: string): Promise<boolean> {
  const server = createServer()
  try {
    server.listen(port, host)
    await once(server, 'listening')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EADDRINUSE') return false
    throw error
  }
  server.close()
  await once(server, 'close')
  return true
}
