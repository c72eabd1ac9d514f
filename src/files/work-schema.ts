import * as z from 'zod/mini';
import { settings, wire } from './names.ts';
import { keys, list, map, pattern, text } from './shape.ts';
import { actsSchema } from './visit.ts';

/** So many pieces of work a sitting has at most, and so many wires a piece. */
export const MOST_WORK = 2000;
export const MOST_WORK_WIRES = 2000;
/** Things that an answer has at most, and letters of a name. */
const MOST_THINGS = 200;
const MOST_NAME = 2000;
const MOST_LEARNER = 80;

const name = (expected: string) => text(expected).check(z.maxLength(MOST_NAME, { error: expected }));
const number = (expected: string, least: number, most: number) =>
  z.number({ error: expected }).check(z.gte(least, { error: expected }), z.lte(most, { error: expected }));
const whole = (expected: string, least: number, most: number) =>
  z.int({ error: expected }).check(z.gte(least, { error: expected }), z.lte(most, { error: expected }));
const few = (expected: string) =>
  list(expected, name('an id')).check(z.maxLength(MOST_THINGS, { error: expected }));
const kind = <const K extends string>(is: K) => z.literal(is);

const answerSays = 'an answer: kind, and what was chosen, marked, landed, set, put in order or typed';
export const answerSchema = z.discriminatedUnion(
  'kind',
  [
    keys('a choice: kind, chosen', { kind: kind('choice'), chosen: few('a list of ids') }),
    keys('a mark: kind, marked', { kind: kind('mark'), marked: few('a list of ids') }),
    keys('a placing: kind, landed', {
      kind: kind('place'),
      landed: map('leads and where each is landed', name('an id'), name('an id')),
    }),
    keys('settings: kind, settings', { kind: kind('set'), settings }),
    keys('an order: kind, steps', { kind: kind('order'), steps: few('a list of ids') }),
    keys('a number: kind, typed', {
      kind: kind('number'),
      typed: z.string({ error: 'text' }).check(z.maxLength(MOST_THINGS, { error: 'short text' })),
    }),
  ],
  { error: answerSays },
);

const time = number('milliseconds since 1970', 0, 8.64e15);
const common = {
  slot: name('the id of a slot'),
  attempt: whole('a number of attempts from 1', 1, 1000),
  at: time,
  took: number('milliseconds', 0, 8.64e15),
  hints: whole('how many helps were open: 0 to 3', 0, 3),
  right: z.boolean({ error: 'true or false' }),
};
const manyWires = `a list of at most ${MOST_WORK_WIRES} wires`;
const workSays = 'a piece of work with a kind: question, job or visit';
export const workSchema = z.discriminatedUnion(
  'kind',
  [
    keys('an answer: slot, attempt, at, took, hints, right, kind, item, answer', {
      ...common,
      kind: kind('question'),
      item: name('the address of a question'),
      answer: answerSchema,
    }),
    keys('a wiring: slot, attempt, at, took, hints, right, kind, wires', {
      ...common,
      kind: kind('job'),
      wires: list(manyWires, wire).check(z.maxLength(MOST_WORK_WIRES, { error: manyWires })),
    }),
    keys('a visit: slot, attempt, at, took, hints, right, kind, callout, acts, said', {
      ...common,
      kind: kind('visit'),
      callout: name('the address of a callout'),
      acts: actsSchema,
      said: name('the id of a fault'),
    }),
  ],
  { error: workSays },
);

const nameSays = `a name of at most ${MOST_LEARNER} letters`;
export const learnerSchema = keys('a learner: code, name', {
  code: pattern('a learner code: 2 to 20 capital letters, digits and hyphens', /^[A-Z0-9][A-Z0-9-]{1,19}$/),
  name: z.exactOptional(z.string({ error: nameSays }).check(z.maxLength(MOST_LEARNER, { error: nameSays }))),
});
