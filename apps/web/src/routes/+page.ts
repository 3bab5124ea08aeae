import { whoIsHere } from '$lib/bench/kept/kept-person.ts'
import { whereToSignIn } from '$lib/devices/where-to-sign-in.ts'
import { homeOf } from '$lib/home.ts'
import { redirect } from '@sveltejs/kit'
import type { PageLoad } from './$types'

export const ssr = false

/** The first page of everybody is the one where their work lies. */
export const load: PageLoad = async ({ fetch }) => {
  const person = await whoIsHere({ fetch }).catch(() => undefined)
  redirect(303, person ? homeOf(person) : await whereToSignIn(fetch, null))
}
