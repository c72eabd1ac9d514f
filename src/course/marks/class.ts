import { type Coursework, type Learner, readCode } from '../coursework/coursework.ts';
import { courseworkPrint } from './fingerprint.ts';

/** What the class is made up from: a result without the work itself. */
export interface ResultHead {
  /** Name of the file it came in. */
  readonly file: string;
  readonly coursework: Coursework;
  readonly learner: Learner;
  /** Milliseconds since 1970. */
  readonly begun: number;
  readonly made: number;
}

/** The coursework that a class is marked by, and how it was come by. */
export interface Chosen {
  readonly coursework: Coursework;
  readonly by: 'tutor' | 'results';
  /** How many results carry it as it is, and how many another version of it. */
  readonly same: number;
  readonly differing: number;
}

/**
 * The tutor's coursework, or the one that most results carry; of equals the one that came first. Undefined when there is
 * neither.
 */
export function chooseCoursework(
  heads: readonly Pick<ResultHead, 'coursework'>[],
  tutors?: Coursework,
): Chosen | undefined {
  const prints = new Map<string, { coursework: Coursework; count: number }>();
  for (const { coursework } of heads) {
    const print = courseworkPrint(coursework);
    const known = prints.get(print);
    if (known) known.count++;
    else prints.set(print, { coursework, count: 1 });
  }
  const most = [...prints.values()].reduce<{ coursework: Coursework; count: number } | undefined>(
    (best, one) => (best && best.count >= one.count ? best : one),
    undefined,
  );
  const coursework = tutors ?? most?.coursework;
  if (!coursework) return undefined;
  const same = prints.get(courseworkPrint(coursework))?.count ?? 0;
  const ofIt = heads.filter(({ coursework: { id } }) => id === coursework.id).length;
  return { coursework, by: tutors ? 'tutor' : 'results', same, differing: ofIt - same };
}

/** The results of one learner, the earliest first. */
export interface Handed<Head> {
  readonly code: string;
  /** Every name that came with this code; more than one is worth a look. */
  readonly names: readonly string[];
  readonly results: readonly Head[];
}

/** Results by learner, in the order of their codes; those of another coursework are put aside. */
export function gatherClass<Head extends ResultHead>(
  heads: readonly Head[],
  coursework: Coursework,
): { readonly learners: readonly Handed<Head>[]; readonly others: readonly Head[] } {
  const byCode = Map.groupBy(
    heads.filter(({ coursework: { id } }) => id === coursework.id),
    ({ learner }) => readCode(learner.code) ?? learner.code,
  );
  const learners = [...byCode].map(([code, results]): Handed<Head> => {
    const names = results.flatMap(({ learner: { name } }) => (name?.trim() ? [name.trim()] : []));
    return {
      code,
      names: [...new Set(names)],
      results: [...results].sort((a, b) => a.made - b.made || (a.file < b.file ? -1 : 1)),
    };
  });
  return {
    learners: learners.sort((a, b) => inOrder(a.code, b.code)),
    others: heads.filter(({ coursework: { id } }) => id !== coursework.id),
  };
}

/** Codes as people sort them: AB-2 before AB-10. */
export const inOrder = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });
