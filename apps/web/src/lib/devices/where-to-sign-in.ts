import { readDevice } from '@tenths/contract'
import { call } from '../api/call.ts'

/**
 * Where somebody who is not signed in goes: on a bench device to the screen where a person takes it over, elsewhere to
 * the sign-in.
 */
export async function whereToSignIn(fetch: typeof globalThis.fetch, next: string | null): Promise<string> {
  const here = await call(readDevice, {}, { fetch }).catch(() => undefined)
  const path = here?.device ? '/take-over' : '/sign-in'
  return next === null ? path : `${path}?next=${encodeURIComponent(next)}`
}
