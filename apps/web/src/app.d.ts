import type { SignedInPerson } from '@tenths/contract'
import type { z } from 'zod'

declare global {
  namespace App {
    interface Error {
      message: string
      code?: string
    }
    interface Platform {
      /** The request as the service received it; the service lets a page ask its API within the process. */
      req: { askApi?: (path: string) => Promise<{ statusCode: number; body: string }> }
    }
    interface PageData {
      /** Present on every page of the people of the shop. */
      person?: z.infer<typeof SignedInPerson>
    }
  }
}

export {}
