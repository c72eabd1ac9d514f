import * as z from 'zod/mini';
import type { Coursework } from '../course/coursework/coursework.ts';
import { FileError, show } from './error.ts';
import { id } from './names.ts';
import { placeAt } from './place.ts';
import { checkShape, keys, list, pattern, text } from './shape.ts';

/** What a coursework holds at most. */
export const MOST_TASKS = 50;
export const MOST_QUESTIONS = 30;
export const MOST_SLOTS = 200;
/** Letters of a title and of what learners are told; letters of the file. */
export const MOST_TITLE = 120;
export const MOST_SAYS = 2000;
export const MOST_COURSEWORK = 100_000;
/** Letters of an id, and how many a task of questions names of one sort. */
const MOST_ID = 80;
const MOST_NAMED = 30;

const whole = (expected: string, least: number, most: number) =>
  z
    .int({ error: expected })
    .check(
      z.gte(least, { error: expected }),
      z.lte(most, { error: expected }),
      z.meta({ description: expected }),
    );
const atMost = (expected: string, most: number) =>
  text(expected).check(z.maxLength(most, { error: expected }));
const name = id.check(z.maxLength(MOST_ID, { error: `an id of at most ${MOST_ID} letters` }));
const names = (what: string) => {
  const expected = `a list of 1 to ${MOST_NAMED} ${what}`;
  return list(expected, name).check(
    z.minLength(1, { error: expected }),
    z.maxLength(MOST_NAMED, { error: expected }),
  );
};
const day = pattern('a day such as 2027-03-31', /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/);
const title = atMost(`a title of at most ${MOST_TITLE} letters`, MOST_TITLE);
const levelSays = '1, 2 or 3';
const level = z.literal([1, 2, 3], { error: levelSays }).check(z.meta({ description: levelSays }));

const rules = {
  id: name,
  attempts: whole('a whole number of attempts from 1 to 10', 1, 10),
  hints: whole('how many helps may be open: 0 to 3', 0, 3),
  pass: z.exactOptional(whole('a whole number: how many must be right', 1, MOST_SLOTS)),
};
const task = <const K extends string, S extends z.core.$ZodShape>(kind: K, shape: S) =>
  keys(`a task of kind ${kind}: id, kind, ${Object.keys(shape).join(', ')}, attempts, hints, pass`, {
    ...rules,
    kind: z.literal(kind),
    ...shape,
  });

const KINDS = 'lesson, questions, job, callout, fault';
const taskSays = `a task with a kind: ${KINDS}`;
const tasks = z.discriminatedUnion(
  'kind',
  [
    task('lesson', { lesson: name }),
    task('questions', {
      title,
      about: keys('what is asked: make, and layouts, quiz or sum', {
        make: name,
        layouts: z.exactOptional(names('layouts')),
        quiz: z.exactOptional(name),
        sum: z.exactOptional(name),
        only: z.exactOptional(names('parts or mistakes to keep to')),
      }),
      level,
      count: whole(`how many questions: 1 to ${MOST_QUESTIONS}`, 1, MOST_QUESTIONS),
    }),
    task('job', { job: name }),
    task('callout', { callout: name }),
    task('fault', { system: name, level }),
  ],
  { error: taskSays },
);

const tasksSay = `a list of 1 to ${MOST_TASKS} tasks`;
const variantsSay = 'own (each learner has variants of their own) or same (the class shares them)';

export const courseworkSchema = keys(
  'a coursework: id, title, says, opens, due, variants, seed, tasks, pass',
  {
    id: name,
    title,
    says: z.exactOptional(atMost(`what learners are told, at most ${MOST_SAYS} letters`, MOST_SAYS)),
    opens: z.exactOptional(day),
    due: z.exactOptional(day),
    variants: z.enum(['own', 'same'], { error: variantsSay }).check(z.meta({ description: variantsSay })),
    seed: whole('a whole number from 0 to 4294967295', 0, 0xffff_ffff),
    tasks: list(tasksSay, tasks).check(
      z.minLength(1, { error: tasksSay }),
      z.maxLength(MOST_TASKS, { error: tasksSay }),
    ),
    pass: z.exactOptional(whole('a whole number: how many tasks must pass', 1, MOST_TASKS)),
  },
).check(
  z.meta({
    title: 'Coursework',
    description:
      'Lessons, questions, wiring jobs and visits that a tutor sets, and the rules by which they pass.',
  }),
);

/** Slots that a task has at least: of a lesson, only its objectives tell. */
const slotsAtLeast = (one: Coursework['tasks'][number]): number => (one.kind === 'questions' ? one.count : 1);

/**
 * A coursework out of data: of the right shape, ids once, not more to pass than there is, days in order.
 * @throws FileError with the place, what was expected there and what was found
 */
export function readCoursework(data: unknown, file: string): Coursework {
  const fail = (path: readonly PropertyKey[], expected: string, found: string): never => {
    throw new FileError({ file, place: placeAt(path), expected, found });
  };
  const coursework = checkShape(courseworkSchema, data, file);
  const { tasks: all, pass, opens, due } = coursework;
  all.forEach((one, k) => {
    if (all.findIndex((other) => other.id === one.id) < k)
      fail(['tasks', k, 'id'], 'an id that no other task has', show(one.id));
    const most = one.kind === 'questions' ? one.count : one.kind === 'lesson' ? MOST_SLOTS : 1;
    if ((one.pass ?? 0) > most)
      fail(['tasks', k, 'pass'], `at most ${most}: the task has no more`, String(one.pass));
  });
  const slots = all.reduce((sum, one) => sum + slotsAtLeast(one), 0);
  if (slots > MOST_SLOTS)
    fail(['tasks'], `at most ${MOST_SLOTS} questions, jobs and visits together`, String(slots));
  if ((pass ?? 0) > all.length)
    fail(['pass'], `at most ${all.length}: there are no more tasks`, String(pass));
  if (opens !== undefined && due !== undefined && due < opens)
    fail(['due'], `a day that is not before ${opens}`, show(due));
  return coursework;
}
