import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** What is measured in time or takes both cores: a film in its own time, an audit of speed, packages that are built first. */
const alone = ['lighthouse', 'stage-files', 'lms-*', 'packages', 'mark-book'].map(
  (name) => `tests/e2e/${name}.test.ts`,
);

/** What takes minutes begins first, so that nothing waits for it at the end. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isLong = ({ moduleId }: TestSpecification) =>
      /\/(?:every-page|offline|items)\.test\.ts$/.test(moduleId);
    const sorted = await super.sort(files);
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}

/** End-to-end tests: the built site in `dist/`, in a real browser. Run `npm run build` first. */
export default defineConfig({
  test: {
    environment: 'node',
    globalSetup: ['tests/e2e/support/global-setup.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // Machines are shared: what comes later than a second has not failed.
    expect: { poll: { timeout: 15_000 } },
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        test: {
          name: 'two at a time',
          include: ['tests/e2e/**/*.test.ts'],
          exclude: alone,
          // A page waits as much as it works: two keep two cores busy, more would only be late.
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: { name: 'one at a time', include: alone, maxWorkers: 1, sequence: { groupOrder: 1 } },
      },
    ],
  },
});
