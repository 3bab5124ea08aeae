import { env } from '$env/dynamic/private'
import type { HandleFetch } from '@sveltejs/kit'

/** A page rendered here asks the API over loopback: the public address may be a proxy's that this machine cannot reach. */
export const handleFetch: HandleFetch = ({ event, request, fetch }) => {
  const url = new URL(request.url)
  const ours = url.origin === event.url.origin && url.pathname.startsWith('/api/')
  if (!ours || !env.API_ORIGIN) return fetch(request)
  return fetch(new Request(new URL(url.pathname + url.search, env.API_ORIGIN), request))
}
