import path from 'node:path'
import { build } from 'esbuild'

/**
 * One file to start quickly. Packages stay outside it: some bring WebAssembly or native code that is found beside
 * their own sources. Only our workspaces, which export TypeScript, are taken in.
 */
await build({
  entryPoints: { server: path.join(import.meta.dirname, 'src/server.ts') },
  outdir: path.join(import.meta.dirname, 'dist'),
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20.19',
  sourcemap: true,
  logLevel: 'warning',
  plugins: [
    {
      name: 'packages-outside',
      setup: (setup) => {
        setup.onResolve({ filter: /^[^./]/ }, ({ path: name, kind }) =>
          kind === 'entry-point' || name.startsWith('@tenths/') ? undefined : { path: name, external: true },
        )
      },
    },
  ],
})
