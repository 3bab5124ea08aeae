import type { signInAs } from '../../../prisma/demo/client.ts'

type Service = Parameters<typeof signInAs>[0]

interface Asked {
  readonly method: string
  readonly url: string
  readonly query: Record<string, string>
  readonly headers: Record<string, string>
  readonly payload?: object
}

/** A server that runs as a process of its own, for the callers that work the demo's jobs. */
export function serviceAt(address: string): Service {
  const inject = async ({ method, url, query, headers, payload }: Asked) => {
    const response = await fetch(`${address}${url}?${new URLSearchParams(query)}`, {
      method,
      headers: { ...headers, ...(payload && { 'content-type': 'application/json' }) },
      ...(payload && { body: JSON.stringify(payload) }),
    })
    const text = await response.text()
    return { statusCode: response.status, json: () => JSON.parse(text) as unknown, cookies: cookiesOf(response) }
  }
  return { inject } as unknown as Service
}

function cookiesOf(response: Response): { name: string; value: string }[] {
  return response.headers.getSetCookie().map((line) => {
    const [name = '', value = ''] = line.split(';')[0]!.split('=')
    return { name, value }
  })
}
