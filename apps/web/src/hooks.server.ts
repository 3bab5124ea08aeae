import type { HandleFetch } from '@sveltejs/kit'

/**
 * A page rendered here asks the API in the process that serves both: the public address may be a proxy's that this
 * machine cannot reach, or its certificate another name's. While the pages are developed on their own server, the
 * request goes on to where that server sends `/api`.
 */
export const handleFetch: HandleFetch = async ({ event, request, fetch }) => {
  const url = new URL(request.url)
  if (url.origin !== event.url.origin || !url.pathname.startsWith('/api/')) return fetch(request)
  const path = url.pathname + url.search
  const askApi = event.platform?.req.askApi
  if (!askApi) return fetch(new Request(new URL(path, import.meta.env.VITE_API_ORIGIN), request))
  const { statusCode, body } = await askApi(path)
  return new Response(body, { status: statusCode, headers: { 'content-type': 'application/json' } })
}
