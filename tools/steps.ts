/** One thing to prove, run by npm. */
export type Step = {
  /** The npm script's name. */
  readonly script: string;
  /** What it proves, in words. */
  readonly says: string;
  readonly args?: readonly string[];
  /** A step that counts its own tests writes Vitest's JSON report. */
  readonly counts?: true;
  /** Scripts that must have passed before this one means anything. */
  readonly after?: readonly string[];
};

/** Every step, in order: the quick ones first. */
export const steps: readonly Step[] = [
  { script: 'types', says: 'types' },
  { script: 'lint', says: 'format, lint and layers' },
  { script: 'test', says: 'unit and property tests', counts: true },
  { script: 'check', says: 'content check' },
  { script: 'build', says: 'build of the site' },
  { script: 'chromium', says: 'a browser to test with' },
  { script: 'e2e', says: 'end-to-end tests', counts: true, after: ['build', 'chromium'] },
  { script: 'bench', says: 'benchmarks, a short run', args: ['--smoke'] },
];
