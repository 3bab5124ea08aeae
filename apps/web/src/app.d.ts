import type { SignedInPerson } from '@tenths/contract'
import type { z } from 'zod'

declare global {
  namespace App {
    interface Error {
      message: string
      code?: string
    }
    interface PageData {
      /** Present on every page of the people of the shop. */
      person?: z.infer<typeof SignedInPerson>
    }
  }
}

export {}
