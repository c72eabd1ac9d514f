import type { Interaction, Standing } from './report.ts';

/** How what the package is for stands now, read from this device. */
export interface Look {
  readonly standing: Standing;
  /** The same in a few words: `12 of 107 solid`. */
  readonly says: string;
  readonly suspend: string;
  /** Answered since the session began, and not looked at before. */
  readonly fresh: readonly Interaction[];
}

/** What a package is for: the course, or a coursework. */
export interface Subject {
  /** Where a learner begins: a path of this site. */
  readonly start: string;
  /** Brings what the platform has kept to this device; resolves to what cannot be brought, in words. */
  readonly restore: (suspended: string) => Promise<string | undefined>;
  readonly look: () => Promise<Look>;
}

/** What a list has gained since it was looked at last. */
export function makeFresh(): (keys: readonly Interaction[]) => readonly Interaction[] {
  let known: Set<string> | undefined;
  return (all) => {
    const before = known;
    known = new Set(all.map(({ key }) => key));
    return before ? all.filter(({ key }) => !before.has(key)) : [];
  };
}

export const UNREADABLE =
  'What your learning platform kept of your progress cannot be read. What is on this device counts.';
