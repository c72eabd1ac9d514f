import { quote } from './error.ts';

/** How many letters must be changed, added, dropped or swapped with a neighbour to make `b` of `a`. */
export function distance(a: string, b: string): number {
  let older: number[] = [];
  let old = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min((old[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (old[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, (older[j - 2] ?? 0) + 1);
      row.push(least);
    }
    older = old;
    old = row;
  }
  return old[b.length] ?? 0;
}

/** The known name most like the given one, if one is like it: a third of its letters may differ, case aside. */
export function closest(name: string, known: Iterable<string>): string | undefined {
  // A name this long was not mistyped, and comparing it would take long.
  if (name.length > 100) return undefined;
  let best: string | undefined;
  let least = Math.floor(name.length / 3) + 1;
  for (const candidate of known) {
    const far = distance(name.toLowerCase(), candidate.toLowerCase());
    if (far >= least) continue;
    least = far;
    best = candidate;
  }
  return best;
}

/** Names that a message lists stay on one line. */
const MOST_LETTERS = 160;

/** What was expected instead of a name nobody knows: `one of id, title (did you mean "title"?)`. */
export function oneOf(name: unknown, known: Iterable<string>): string {
  const all = [...known];
  const near = typeof name === 'string' ? closest(name, all) : undefined;
  let letters = 0;
  const listed = all.filter((one) => {
    letters += one.length + 2;
    return letters <= MOST_LETTERS;
  });
  const list = listed.join(', ') + (listed.length < all.length ? ' …' : '');
  return `one of ${list || '(none)'}${near === undefined ? '' : ` (did you mean ${quote(near)}?)`}`;
}
