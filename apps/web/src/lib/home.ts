import type { Role } from '@tenths/contract'

/** Where a person's work lies: the desk for who answers for everything, then the counter, then the bench. */
export function homeOf(roles: readonly Role[]): '/desk' | '/counter' | '/bench' {
  if (roles.includes('owner')) return '/desk'
  return roles.includes('counter') ? '/counter' : '/bench'
}

/** A `?next=` address, if it stays on this site; anything else would send a signed-in person to a stranger's page. */
export function safeNext(next: string | null): string | null {
  return next && /^\/(?![/\\])/.test(next) ? next : null
}
