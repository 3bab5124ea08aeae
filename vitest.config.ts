import { defineConfig } from 'vitest/config'

/** Tests by cost: each project can run alone (`npm run test:unit` and so on). */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['packages/*/src/**/*.test.ts', 'apps/api/src/**/*.test.ts', 'apps/web/src/**/*.test.ts'],
        },
      },
      { test: { name: 'reference', include: ['tests/reference/**/*.test.ts'] } },
      {
        test: {
          name: 'api',
          include: ['tests/api/**/*.test.ts', 'tests/faults/**/*.test.ts'],
          globalSetup: ['tests/support/postgres-for-tests.ts'],
          testTimeout: 30_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/postgres-for-tests.ts'],
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 120_000,
        },
      },
      {
        // No test of anything but that every picture in docs/pictures/bench can be taken: `npm run pictures`.
        test: {
          name: 'pictures',
          include: ['tests/browser/**/*.pictures.ts'],
          globalSetup: ['tests/support/postgres-for-tests.ts'],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 240_000,
        },
      },
    ],
  },
})
