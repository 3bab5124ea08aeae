import { ServiceError } from '../http/problem.ts'

/**
 * What waited on a device must not be written down under the name of whoever is signed in by now.
 * @param field the input's own name for who did it
 * @throws ServiceError `other-person`
 */
export function requireSamePerson(signedIn: string, doneBy: string | undefined, field: string): void {
  if (doneBy === undefined || doneBy === signedIn) return
  throw new ServiceError(
    'other-person', 'Somebody else did this: it goes out when that person is signed in again.', field,
  )
}
