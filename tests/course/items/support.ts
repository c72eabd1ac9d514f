import type { Answer, Item, Note } from '../../../src/course/item.ts';
import { makeRandom } from '../../../src/course/random.ts';
import type { Level, Maker, Shelf, Task } from '../../../src/course/task.ts';
import { loadShelf } from '../../../src/files/site/course.ts';

/** The course’s own layouts and quizzes. */
export const shelf = loadShelf();

/** Items that a maker makes of a task, from as many seeds as are asked for; levels take turns unless one is told. */
export function itemsOf(
  maker: Maker,
  task: Omit<Task, 'make'>,
  seeds: number,
  level?: Level,
  from: Shelf = shelf,
): Item[] {
  return Array.from({ length: seeds }, (_, seed) =>
    maker.make(from, { make: maker.id, ...task }, seed, level ?? (((seed % 3) + 1) as Level)),
  ).filter((item) => item !== undefined);
}

/** Every text of a note. */
export const textOf = ({ cause, consequence, look }: Note): string => `${cause} ${consequence} ${look}`;

const subsets = (ids: readonly string[]): string[][] =>
  ids.reduce<string[][]>((all, id) => all.flatMap((some) => [some, some.concat(id)]), [[]]);

function landings(leads: readonly string[], ways: readonly (string | undefined)[]): Record<string, string>[] {
  return leads.reduce<Record<string, string>[]>(
    (all, lead) =>
      all.flatMap((some) => ways.map((way) => (way === undefined ? some : { ...some, [lead]: way }))),
    [{}],
  );
}

function orders(ids: readonly string[], most: number, seed: number): string[][] {
  if (ids.length <= 4) {
    return ids.reduce<string[][]>(
      (all, id) =>
        all.flatMap((some) => Array.from({ length: some.length + 1 }, (_, at) => some.toSpliced(at, 0, id))),
      [[]],
    );
  }
  const random = makeRandom(seed);
  return Array.from({ length: most }, () => random.shuffle(ids));
}

/** Figures around the right one, and the slips of a factor that hands make. */
const figures = (typed: string, unit: string): string[] => {
  const value = Number.parseFloat(typed.replace('−', '-'));
  const factors = [0.001, 0.1, 0.5, 0.8, 0.93, 1, 1.07, 1.2, 2, 3.7, 10, 60, 1000, -1];
  return [
    ...factors.map((factor) => `${Number((value * factor).toPrecision(4))} ${unit}`),
    `0 ${unit}`,
    `${value}`,
    'about right',
  ];
};

/**
 * Answers that a learner can give to an item: all of a small form, a sample of a large one. A choice of one is
 * answered with one; nothing chosen is no answer.
 */
export function answersTo({ form, answer }: Item, most = 60, seed = 1): Answer[] {
  const some = <T>(all: readonly T[]): T[] => makeRandom(seed).shuffle(all).slice(0, most);
  switch (form.kind) {
    case 'choice': {
      const ids = form.options.map(({ id }) => id);
      const chosen = form.many
        ? some(subsets(ids).filter(({ length }) => length > 0))
        : ids.map((id) => [id]);
      return chosen.map((one) => ({ kind: 'choice', chosen: one }));
    }
    case 'mark': {
      const ids = form.among.map(({ id }) => id);
      const marked = form.one ? ids.map((id) => [id]) : some(subsets(ids));
      return marked.map((one) => ({ kind: 'mark', marked: one }));
    }
    case 'place': {
      const ways = [...form.ways.map(({ id }) => id), undefined];
      const all = landings(
        form.leads.map(({ id }) => id),
        ways,
      );
      return some(all).map((landed) => ({ kind: 'place', landed }));
    }
    case 'set': {
      const all = form.controls.reduce<Record<string, string>[]>(
        (sets, { id, settings }) =>
          sets.flatMap((one) => settings.map((setting) => ({ ...one, [id]: setting }))),
        [{}],
      );
      return some(all).map((settings) => ({ kind: 'set', settings }));
    }
    case 'order':
      return orders(
        form.steps.map(({ id }) => id),
        most,
        seed,
      ).map((steps) => ({ kind: 'order', steps }));
    case 'number':
      return figures(answer.kind === 'number' ? answer.typed : '1', form.unit).map((typed) => ({
        kind: 'number',
        typed,
      }));
  }
}
