import adapter from '@sveltejs/adapter-node'

/** @type {import('@sveltejs/kit').Config} */
export default {
  compilerOptions: { runes: true },
  kit: {
    adapter: adapter(),
    // One shell serves every page of the shop's people, whatever its depth: it names its files from the root.
    paths: { relative: false },
    // Customers on the status page get no worker: the pages of the shop's people register it.
    serviceWorker: { register: false },
    // No page needs another origin; the style of a bar or a picture is set by attributes, never by an inline style.
    csp: {
      mode: 'auto',
      directives: {
        'default-src': ['self'],
        'script-src': ['self'],
        'style-src': ['self'],
        // The one exception: the framework's own line that reads the title of a new page aloud hides itself by this style.
        'style-src-attr': ['unsafe-hashes', 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo='],
        'img-src': ['self', 'data:', 'blob:'],
        'connect-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['none'],
        'form-action': ['self'],
        'frame-ancestors': ['none'],
      },
    },
  },
}
