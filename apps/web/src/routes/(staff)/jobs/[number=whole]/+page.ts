import { redirect } from '@sveltejs/kit'
import type { PageLoad } from './$types'

/** The tag's code leads here: to the job's page, which everybody of the shop may read. */
export const load: PageLoad = ({ params }) => {
  redirect(303, `/counter/jobs/${params.number}`)
}
