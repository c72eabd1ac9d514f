import type { Outline } from '../../../src/course/outline.ts';
import type { Task } from '../../../src/course/task.ts';
import type { Trial } from '../../../src/course/trial.ts';

export const DAY = 86_400_000;
/** A Monday in 2026. */
export const START = 1_790_000_000_000;

let seed = 0;

/** An answer to a variant that nobody has had before: right and without help unless told. */
export const trial = (given: Partial<Trial> = {}): Trial => ({
  at: START,
  objective: 'follow-the-call',
  item: `path-order/three-port/${++seed}/1`,
  method: 'path-order',
  right: true,
  attempt: 1,
  hints: 0,
  shown: 0,
  took: 20_000,
  mode: 'practice',
  ...given,
});

/** A series of first answers, a minute apart: `R` right, `W` wrong, `H` right with a hint, `S` right with a step shown. */
export const answers = (letters: string, given: Partial<Trial> = {}): Trial[] =>
  [...letters].map((letter, k) =>
    trial({
      ...given,
      at: (given.at ?? START) + k * 60_000,
      right: letter !== 'W',
      hints: letter === 'H' ? 1 : 0,
      shown: letter === 'S' ? 2 : 0,
    }),
  );

/** A course of lessons with one objective each; `tasks` by objective. */
export const outlineOf = (
  parts: Readonly<Record<string, Readonly<Record<string, readonly Task[]>>>>,
): Outline => {
  let number = 0;
  return {
    routes: [],
    parts: Object.entries(parts).map(([id, lessons], k) => ({
      id,
      number: k + 1,
      title: id,
      summary: '',
      lessons: Object.entries(lessons).map(([objective, tasks]) => ({
        slug: `about-${objective}`,
        number: ++number,
        title: `About ${objective}`,
        summary: '',
        minutes: 5,
        objectives: [{ id: objective, says: `do ${objective}`, tasks }],
      })),
    })),
  };
};
