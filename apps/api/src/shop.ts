import type { Pool } from 'pg'
import type { PrismaClient } from './database/prisma.ts'
import type { Announcer } from './events/announcer.ts'
import type { SignedIn, Sessions } from './people/sessions.ts'

/** What every use case may ask for: the shop's database, its secrets, its clock. */
export interface Shop {
  /** Connections of the service's login. */
  readonly pool: Pool
  /** Schema that the shop's tables lie in; channels and locks carry its name. */
  readonly schema: string
  /** For plain reads and lists; never inside a command's transaction. */
  readonly prisma: PrismaClient
  readonly sessions: Sessions
  readonly secrets: Secrets
  readonly announcer: Announcer
  /** The server's clock; tests may set it. */
  readonly now: () => Date
  /** Public address such as `https://shop.example`; undefined on loopback. */
  readonly origin: string | undefined
  /** Whether pages are served over TLS by this very process. */
  readonly hasCertificate: boolean
}

/** Keys of the data folder, in hexadecimal. They never lie in the database. */
export interface Secrets {
  readonly pinPepper: string
  readonly statusLinkKey: string
}

declare module 'fastify' {
  interface FastifyInstance {
    shop: Shop
  }
  interface FastifyRequest {
    person: SignedIn | null
  }
}
