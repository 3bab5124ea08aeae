import { ServiceError } from '../http/problem.ts'

/** The version in an If-Match header, `"3"`; null when there is none. An unreadable one counts as none. */
export function readIfMatch(header: string | undefined): number | null {
  const version = /^(?:W\/)?"?(\d{1,9})"?$/.exec(header ?? '')?.[1]
  return version === undefined ? null : Number(version)
}

/**
 * Holds an edit against the version it was based on.
 * @throws ServiceError `version-missing`, or `edit-stale` when somebody changed it since.
 */
export function requireVersion(ifMatch: number | null, current: number): void {
  if (ifMatch === null) {
    throw new ServiceError('version-missing', 'Send the version that was read in If-Match, so that nobody’s change is lost.')
  }
  if (ifMatch !== current) {
    throw new ServiceError('edit-stale', 'Somebody changed this since you read it. Look at theirs, then save again.')
  }
}
