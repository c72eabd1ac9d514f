import { defineConfig } from 'vitest/config';

/** Unit and property tests: plain Node, no browser and no build. */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**'],
    environment: 'node',
  },
});
