import { defineConfig } from 'vitest/config';

/** End-to-end tests: the built site in `dist/`, in a real browser. Run `npm run build` first. */
export default defineConfig({
  test: {
    include: ['tests/e2e/**/*.test.ts'],
    environment: 'node',
    globalSetup: ['tests/e2e/support/global-setup.ts'],
    // One browser serves every file; two cores cannot drive more than one page well.
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // Machines are shared: what comes later than a second has not failed.
    expect: { poll: { timeout: 15_000 } },
  },
});
