import { rememberedBench } from '$lib/bench/device/remembered.ts'
import { followTag } from '$lib/bench/scanning/open-tag.ts'
import { redirect } from '@sveltejs/kit'
import type { PageLoad } from './$types'

/** A part's tag, read by a phone: to the part's next step, or to its job when there is none. */
export const load: PageLoad = async ({ params, parent }) => {
  const { person } = await parent()
  const bench = rememberedBench() ?? person?.device?.benchId ?? null
  const led = await followTag({ jobNumber: Number(params.number), mark: params.mark }, bench)
  redirect(303, led.kind === 'step' ? led.path : `/counter/jobs/${params.number}`)
}
