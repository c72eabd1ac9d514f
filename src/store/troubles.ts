import type { Trouble } from './store.ts';

export type TroubleKind = Trouble['kind'];

/** The gravest first. */
const ORDER: readonly TroubleKind[] = ['blocked', 'full', 'newer', 'waiting', 'damaged', 'clock'];

const HELD = 'Your answers are safe while this tab stays open.';

const WORDS: Readonly<Record<TroubleKind, Omit<Trouble, 'kind'>>> = {
  blocked: {
    says: `This browser does not let the site keep your progress. ${HELD}`,
    todo: 'Save a backup file before you close the tab. Then allow this site to store data, or leave private browsing.',
  },
  full: {
    says: `There is no room left on this device to keep your progress. ${HELD}`,
    todo: 'Free some space, and your progress is kept by itself. Or save a backup file before you close the tab.',
  },
  newer: {
    says: `A newer version of this site has kept your progress, and this page is the older one. ${HELD}`,
    todo: 'Save a backup file if you have just answered something. Then reload the page.',
  },
  waiting: {
    says: `Another tab has an older version of this site open. ${HELD}`,
    todo: 'Close the other tabs of this site, or reload them. Then your progress is kept.',
  },
  damaged: {
    says: 'Some of your answers cannot be read. They are left out here, and they stay where they are.',
    todo: 'If you have a backup file from before, load it. Answers that are there already are not doubled.',
  },
  clock: {
    says: 'The clock of this device is behind your last answer. Your answers stay in their right order.',
    todo: 'Check the date and the time of this device.',
  },
};

/** The trouble that a failed opening or writing is. */
export function troubleOf(problem: unknown): TroubleKind {
  const name = problem instanceof Error || problem instanceof DOMException ? problem.name : '';
  if (name === 'QuotaExceededError') return 'full';
  return name === 'VersionError' ? 'newer' : 'blocked';
}

/** The troubles of these kinds in words, the gravest first. */
export const inWords = (kinds: ReadonlySet<TroubleKind>): readonly Trouble[] =>
  ORDER.filter((kind) => kinds.has(kind)).map((kind) => ({ kind, ...WORDS[kind] }));
