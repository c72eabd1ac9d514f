import type { Random } from '../random.ts';
import type { Objective, Task } from '../task.ts';
import type { ObjectiveState } from './course-state.ts';

/** A task to ask, and the objective it is evidence of. */
export interface Pick {
  readonly objective: Objective;
  readonly task: Task;
}

/** What it takes to solve what a task asks: its maker, or the finer name where sums and quizzes differ. */
export const methodOf = ({ make, sum, quiz }: Task): string =>
  sum !== undefined ? `${make}:${sum}` : quiz !== undefined ? `quiz:${quiz}` : make;

/** Due first, then shaky, then not met yet in the order of the course, then what is solid. */
function rankOf({ due, mastery }: ObjectiveState): number {
  if (due) return 0;
  return mastery.state === 'shaky' ? 1 : mastery.state === 'unseen' ? 2 : 3;
}

/**
 * A mixed set: so that the method must be chosen, no two neighbours need the same one.
 * @param among what may be asked, such as `courseState(…).objectives`; each has at least one task
 * @param most how many tasks; there are fewer only where all tasks need one method
 * @param random deals the tasks and the order of equals
 */
export function mixedSet(among: readonly ObjectiveState[], most: number, random: Random): readonly Pick[] {
  const pool = random
    .shuffle(among)
    .filter(({ objective }) => objective.tasks.length > 0)
    .map((state) => ({ state, rank: rankOf(state), times: 0 }));
  const methods = new Set(pool.flatMap(({ state }) => state.objective.tasks.map(methodOf)));
  const set: Pick[] = [];
  while (set.length < most) {
    const before = set.at(-1);
    const taken = before && methodOf(before.task);
    const open = pool
      .map((entry) => ({
        entry,
        tasks: entry.state.objective.tasks.filter((task) => methodOf(task) !== taken),
      }))
      .filter(({ tasks }) => tasks.length > 0);
    if (open.length === 0 || (methods.size === 1 && set.length > 0)) break;
    const best = open.reduce((a, b) =>
      b.entry.times < a.entry.times || (b.entry.times === a.entry.times && b.entry.rank < a.entry.rank)
        ? b
        : a,
    );
    best.entry.times++;
    set.push({ objective: best.entry.state.objective, task: random.pick(best.tasks) });
  }
  return set;
}

/** What is due, the longest overdue first. */
export const dueFirst = (among: readonly ObjectiveState[]): readonly ObjectiveState[] =>
  among.filter(({ due }) => due).sort((a, b) => (a.card?.due ?? 0) - (b.card?.due ?? 0));

/** A revision set: the same, of what is due alone; the longest overdue are taken where there are too many. */
export function revisionSet(among: readonly ObjectiveState[], most: number, random: Random): readonly Pick[] {
  const due = dueFirst(among)
    .filter(({ objective }) => objective.tasks.length > 0)
    .slice(0, most);
  return separate(
    due.map(({ objective }) => ({ objective, task: random.pick(objective.tasks) })),
    ({ task }) => methodOf(task),
  );
}

/**
 * Puts a list in an order in which no two neighbours are alike. What cannot be parted is left out: a list that is
 * mostly of one method keeps just as many of it as the others can part.
 */
export function separate<T>(list: readonly T[], method: (one: T) => string): readonly T[] {
  const groups = new Map<string, T[]>();
  for (const one of list) groups.set(method(one), [...(groups.get(method(one)) ?? []), one]);
  const order: T[] = [];
  for (let last = ''; ; ) {
    // The largest group that is not the last one's: taking it leaves the most room for the rest.
    const [name, group] = [...groups]
      .filter(([key, { length }]) => length > 0 && (key !== last || order.length === 0))
      .reduce<[string, T[]]>((a, b) => (b[1].length > a[1].length ? b : a), ['', []]);
    const next = group.shift();
    if (next === undefined) return order;
    order.push(next);
    last = name;
  }
}
