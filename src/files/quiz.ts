import * as z from 'zod/mini';
import type { AuthoredChoice, AuthoredStep, Quiz } from '../course/quiz.ts';
import { FileError, show } from './error.ts';
import { id } from './names.ts';
import { placeAt } from './place.ts';
import { checkShape, keys, list, text } from './shape.ts';
import { oneOf } from './suggest.ts';
import { parseYaml } from './yaml.ts';

const WHY = {
  cause: 'why it is so',
  consequence: 'what comes of it',
  look: 'where to look',
} as const;
type Why = keyof typeof WHY;
const whys = Object.keys(WHY) as Why[];

const hintsSays = 'three hints: where to look, which rule, the step itself';
const hint = text('a hint');
const hints = z
  .tuple([hint, hint, hint], { error: hintsSays })
  .check(z.meta({ description: hintsSays, minItems: 3, items: false }));

const option = keys('an option: id, says, and either right or cause, consequence and look', {
  id,
  says: text('what it says'),
  right: z.exactOptional(z.literal(true, { error: 'true, or no such key' })),
  cause: z.exactOptional(text(WHY.cause)),
  consequence: z.exactOptional(text(WHY.consequence)),
  look: z.exactOptional(text(WHY.look)),
});

const choice = keys('a question: id, ask, options, hints, steps', {
  id,
  ask: text('the question'),
  many: z.exactOptional(z.literal(true, { error: 'true, or no such key' })),
  options: list('a list of options', option),
  hints,
  steps: list('the solution, a sentence each', text('a sentence of the solution')),
});

const step = keys('a step: id, says, after', {
  id,
  says: text('what is done'),
  after: z.exactOptional(
    list(
      'a list of steps that come before this one, and why',
      keys('a step before: step, cause, consequence, look', {
        step: id,
        cause: text(WHY.cause),
        consequence: text(WHY.consequence),
        look: text(WHY.look),
      }),
    ),
  ),
});

export const quizSchema = keys('a quiz: id, title, source, and either choices or procedure', {
  id,
  title: text('a title'),
  source: text('a source with its edition, or common practice'),
  choices: z.exactOptional(list('a list of questions', choice)),
  procedure: z.exactOptional(
    keys('a procedure: ask, steps, hints', {
      ask: text('the question'),
      steps: list('the steps, in an order that is right', step),
      hints,
    }),
  ),
}).check(z.meta({ title: 'Quiz' }));

/** Wrong options that a question needs at least, so that a seed has some to leave out. */
const LEAST_WRONG = 3;

type Fail = (path: PropertyKey[], expected: string, found: string) => never;

/**
 * A quiz out of YAML text. Beyond its shape: ids stand once; every wrong option says why, what comes of it and where to
 * look, and no two say the same; of a question with `many` the right ones do too, for whoever leaves one out; the steps
 * of a procedure stand in an order that keeps their own constraints, and none is free of them.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseQuiz(yaml: string, file: string): Quiz {
  const quiz = checkShape(quizSchema, parseYaml(yaml, file), file);
  const fail: Fail = (path, expected, found) => {
    throw new FileError({ file, place: placeAt(path), expected, found });
  };
  const { choices, procedure } = quiz;
  if ((choices === undefined) === (procedure === undefined))
    fail([], 'either choices or procedure', choices ? 'both' : 'neither');
  if (choices) {
    if (choices.length === 0) fail(['choices'], 'at least one question', 'an empty list');
    once(choices, ['choices'], fail);
    choices.forEach((one, at) => {
      checkChoice(one, ['choices', at], fail);
    });
  }
  if (procedure) checkSteps(procedure.steps, ['procedure', 'steps'], fail);
  return quiz;
}

function once(all: readonly { readonly id: string }[], path: PropertyKey[], fail: Fail): void {
  all.forEach(({ id: own }, at) => {
    if (all.findIndex((other) => other.id === own) < at)
      fail([...path, at, 'id'], 'an id that no other has', show(own));
  });
}

function checkChoice({ options, many, steps }: AuthoredChoice, path: PropertyKey[], fail: Fail): void {
  const place = [...path, 'options'];
  once(options, place, fail);
  const wrong = options.filter(({ right }) => !right);
  const right = options.length - wrong.length;
  if (wrong.length < LEAST_WRONG) fail(place, `at least ${LEAST_WRONG} wrong options`, `${wrong.length}`);
  if (right < 1 || (right > 1 && !many))
    fail(place, many ? 'at least one right option' : 'one right option', `${right}`);
  if (steps.length === 0) fail([...path, 'steps'], 'at least one sentence', 'an empty list');
  options.forEach((one, at) => {
    for (const why of whys) {
      if (one.right && !many && one[why] !== undefined)
        fail([...place, at, why], 'no such key on the one right option', show(one[why]));
      if ((!one.right || many) && one[why] === undefined) fail([...place, at, why], WHY[why], 'nothing');
      const first = options.findIndex((other) => other[why] !== undefined && other[why] === one[why]);
      if (one[why] !== undefined && first < at)
        fail([...place, at, why], 'words that no other option has', show(one[why]));
    }
  });
}

function checkSteps(steps: readonly AuthoredStep[], path: PropertyKey[], fail: Fail): void {
  if (steps.length < 3) fail(path, 'at least 3 steps', `${steps.length}`);
  once(steps, path, fail);
  const ids = steps.map((one) => one.id);
  const named = new Set(steps.flatMap(({ after = [] }) => after.map((before) => before.step)));
  steps.forEach(({ id: own, after = [] }, at) => {
    after.forEach(({ step: before }, k) => {
      const place = [...path, at, 'after', k, 'step'];
      if (!ids.includes(before)) fail(place, oneOf(before, ids), show(before));
      // In a right order every step follows those it needs, so no circle of needs can stand in the file.
      if (ids.indexOf(before) >= at) fail(place, `a step that stands above ${own}`, show(before));
      if (after.findIndex((other) => other.step === before) < k) fail(place, 'each step once', show(before));
    });
    if (after.length === 0 && !named.has(own))
      fail([...path, at, 'after'], 'a step that this one comes after, or before', 'nothing');
  });
}
