import type { Audience } from '@tenths/contract'
import type { FastifyRequest } from 'fastify'
import type { SignedIn } from '../people/sessions.ts'
import { readPerson } from '../people/session-cookie.ts'
import { ServiceError } from './problem.ts'

/**
 * A hook that runs before the body is read: it finds who calls, with the roles of this moment, and refuses whoever is
 * not of the audience.
 */
export function guard(who: Audience): (request: FastifyRequest) => Promise<void> {
  return async (request) => {
    if (who === 'anyone') return
    request.person = await readPerson(request)
    allow(request.person, who)
  }
}

/**
 * The first line of every use case.
 * @throws ServiceError `not-signed-in`, or `not-allowed` when none of the person's roles is of the audience.
 */
export function allow(person: SignedIn | null, who: Audience): asserts person is SignedIn {
  if (who === 'anyone') throw new Error('A route for anyone has no signed-in person.')
  if (person === null) throw new ServiceError('not-signed-in', 'Sign in first.')
  if (!person.roles.some((role) => who.includes(role))) {
    throw new ServiceError('not-allowed', `This is for ${who.map((role) => titleOfRole[role]).join(' or ')}.`)
  }
}

const titleOfRole = { counter: 'the counter', machinist: 'a machinist', owner: 'the owner' } as const
