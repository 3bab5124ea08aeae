import type { SignedInPerson } from '@tenths/contract'
import type { z } from 'zod'

/**
 * Where a person's work lies: on a bench device its bench; elsewhere the desk for who answers for everything, then the
 * counter, then the bench.
 */
export function homeOf({ roles, device }: Pick<z.infer<typeof SignedInPerson>, 'roles' | 'device'>): string {
  if (device) return `/bench/${device.benchId}`
  if (roles.includes('owner')) return '/desk'
  return roles.includes('counter') ? '/counter' : '/bench'
}

/** A `?next=` address, if it stays on this site; anything else would send a signed-in person to a stranger's page. */
export function safeNext(next: string | null): string | null {
  return next && /^\/(?![/\\])/.test(next) ? next : null
}
