import { call } from '$lib/api/call.ts'
import { ProblemError } from '$lib/api/problem.ts'
import { error } from '@sveltejs/kit'
import { readStatus } from '@tenths/contract'
import type { PageServerLoad } from './$types'

// No script is sent along: the page is read, not worked with.
export const csr = false

/** Rendered whole on the server: the customer's browser runs nothing, keeps nothing and tells nobody the address. */
export const load: PageServerLoad = async ({ params, fetch, setHeaders }) => {
  setHeaders({
    'cache-control': 'no-store',
    'referrer-policy': 'no-referrer',
    'x-robots-tag': 'noindex, nofollow',
  })
  try {
    return { status: await call(readStatus, { params: { token: params.token } }, { fetch }) }
  } catch (problem) {
    if (!(problem instanceof ProblemError)) throw problem
    if (problem.status === 404 || problem.code === 'body-invalid') {
      error(404, { message: 'This link shows nothing any more. Ask the shop for a new one.' })
    }
    error(503, { message: 'The shop’s server does not answer at the moment. Try again in a few minutes.' })
  }
}
