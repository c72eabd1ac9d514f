import { defineConfig } from 'vitest/config';

/** Unit and property tests: plain Node, no browser and no build. */
export default defineConfig({
  test: {
    // Machines are shared: a test that waits for its turn has not failed.
    testTimeout: 60_000,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**'],
    environment: 'node',
  },
});
