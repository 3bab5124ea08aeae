import { sveltekit } from '@sveltejs/kit/vite'
import { defineConfig } from 'vite'
import { withoutSchemas } from './without-schemas.ts'

/** While the pages are developed on their own server, the API answers from another. */
const apiOrigin = process.env.API_ORIGIN ?? 'http://127.0.0.1:4310'

export default defineConfig({
  plugins: [sveltekit(), withoutSchemas],
  define: { 'import.meta.env.VITE_API_ORIGIN': JSON.stringify(apiOrigin) },
  server: { proxy: { '/api': apiOrigin } },
})
