import { env } from '$env/dynamic/private'
import type { Handle, HandleFetch } from '@sveltejs/kit'

/** Headers of every page, beside the content security policy that Kit writes. */
export const handle: Handle = async ({ event, resolve }) => {
  const response = await resolve(event)
  response.headers.set('x-content-type-options', 'nosniff')
  if (!response.headers.has('referrer-policy')) response.headers.set('referrer-policy', 'same-origin')
  return response
}

/** A page rendered here asks the API over loopback: the public address may be a proxy's that this machine cannot reach. */
export const handleFetch: HandleFetch = ({ event, request, fetch }) => {
  const url = new URL(request.url)
  const ours = url.origin === event.url.origin && url.pathname.startsWith('/api/')
  if (!ours || !env.API_ORIGIN) return fetch(request)
  return fetch(new Request(new URL(url.pathname + url.search, env.API_ORIGIN), request))
}
