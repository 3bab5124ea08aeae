import { fileURLToPath } from 'node:url'
import { sveltekit } from '@sveltejs/kit/vite'
import { defineConfig, type Plugin } from 'vite'

/** While the pages are developed on their own server, the API answers from another. */
const apiOrigin = process.env.API_ORIGIN ?? 'http://127.0.0.1:4310'

/** The browser is spared the schemas of the wire, a fifth of what a bench would load (decision 012). */
const withoutSchemas: Plugin = {
  name: 'without-schemas',
  enforce: 'pre',
  resolveId(source) {
    return source === 'zod' && this.environment.config.consumer === 'client'
      ? fileURLToPath(new URL('src/lib/api/no-schemas.ts', import.meta.url))
      : null
  },
}

export default defineConfig({
  plugins: [withoutSchemas, sveltekit()],
  define: { 'import.meta.env.VITE_API_ORIGIN': JSON.stringify(apiOrigin) },
  server: { proxy: { '/api': apiOrigin } },
})
