import { parseArgs } from 'node:util';

/** What can be asked for. */
export const PACKAGES = ['scorm-1.2', 'scorm-2004', 'cmi5', 'qti'] as const;
export type PackageKind = (typeof PACKAGES)[number];

export const usage = `Usage: npm run package -- <${PACKAGES.join(' | ')} | all> [options]
  --coursework <file>  a package of this coursework instead of the whole course
  --out <folder>       where to write it; packages/ unless told
  --pass-mark <1-100>  the platform passes a learner from this score on, whatever rule the coursework has
  --site <folder>      use this site, built for packages, instead of building one
  --seed <n>           QTI: which variants of the questions, 0 to 4294967295; 1 unless told
  --count <n>          QTI: how many variants of each kind of question, 1 to 50; 1 unless told`;

export interface Request {
  readonly kinds: readonly PackageKind[];
  readonly coursework: string | undefined;
  readonly out: string;
  /** 0 to 1. */
  readonly passMark: number | undefined;
  readonly site: string | undefined;
  readonly seed: number;
  readonly count: number;
}

/** Asked wrongly: the message says what was expected. */
export class UsageError extends Error {}

function whole(name: string, text: string | undefined, least: number, most: number): number | undefined {
  if (text === undefined) return undefined;
  const value = /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new UsageError(`--${name}: expected a whole number from ${least} to ${most}, found “${text}”`);
}

function parsed(args: readonly string[]) {
  const text = { type: 'string' } as const;
  const options = { coursework: text, out: text, 'pass-mark': text, site: text, seed: text, count: text };
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/**
 * What was asked for on the command line.
 * @throws UsageError
 */
export function readRequest(args: readonly string[]): Request {
  const { values, positionals } = parsed(args);
  const [asked, ...rest] = positionals;
  if (asked === undefined) throw new UsageError('Which package?');
  if (rest.length > 0) throw new UsageError(`expected one kind of package, found also “${rest.join(' ')}”`);
  const kinds = asked === 'all' ? PACKAGES : PACKAGES.filter((one) => one === asked);
  if (kinds.length === 0)
    throw new UsageError(`expected one of ${PACKAGES.join(', ')} or all, found “${asked}”`);
  const mark = whole('pass-mark', values['pass-mark'], 1, 100);
  return {
    kinds,
    coursework: values.coursework,
    out: values.out ?? 'packages',
    passMark: mark === undefined ? undefined : mark / 100,
    site: values.site,
    seed: whole('seed', values.seed, 0, 0xffff_ffff) ?? 1,
    count: whole('count', values.count, 1, 50) ?? 1,
  };
}
