import type { Told } from '../../engine/diagnose/judge.ts';

/** A test of the walk-through, or several in a row that told nothing and could not have told more. */
export type WalkRow =
  | { readonly kind: 'told'; readonly number: number; readonly told: Told }
  | {
      readonly kind: 'nothing';
      readonly from: number;
      readonly to: number;
      readonly entries: readonly number[];
    };

/**
 * The tests of a visit as they are walked through: each that told something, or where a better one was at hand, by
 * itself; the rest folded together.
 */
export function walkOf(trail: readonly Told[]): WalkRow[] {
  const rows: WalkRow[] = [];
  trail.forEach((told, k) => {
    const number = k + 1;
    const last = rows.at(-1);
    if (told.after < told.before || told.better) rows.push({ kind: 'told', number, told });
    else if (last?.kind === 'nothing')
      rows.splice(-1, 1, { ...last, to: number, entries: [...last.entries, told.entry] });
    else rows.push({ kind: 'nothing', from: number, to: number, entries: [told.entry] });
  });
  return rows;
}

/** How many faults still fitted: at the door, then after each test that ruled something out. */
export const countsOf = (trail: readonly Told[]): number[] => {
  const [first] = trail;
  if (!first) return [];
  return [first.before, ...trail.filter(({ before, after }) => after < before).map(({ after }) => after)];
};
