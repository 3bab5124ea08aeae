import { ProblemError } from '$lib/api/problem.ts'
import { whoIsHere } from '$lib/bench/kept/kept-person.ts'
import { whereToSignIn } from '$lib/devices/where-to-sign-in.ts'
import { error, redirect } from '@sveltejs/kit'
import type { LayoutLoad } from './$types'

// One shell, the same for everybody: the server renders nothing that a tablet could not keep.
export const ssr = false

export const load: LayoutLoad = async ({ fetch, url }) => {
  try {
    return { person: await whoIsHere({ fetch }) }
  } catch (problem) {
    if (!(problem instanceof ProblemError)) throw problem
    if (problem.code === 'not-signed-in') {
      redirect(303, await whereToSignIn(fetch, url.pathname + url.search))
    }
    error(problem.status || 503, { message: problem.message, code: problem.code })
  }
}
