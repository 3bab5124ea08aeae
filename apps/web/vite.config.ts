import { sveltekit } from '@sveltejs/kit/vite'
import { defineConfig } from 'vite'

export default defineConfig({
  plugins: [sveltekit()],
  // While the pages are developed on their own server, the API answers from its own port.
  server: { proxy: { '/api': process.env.API_ORIGIN ?? 'http://127.0.0.1:4310' } },
})
