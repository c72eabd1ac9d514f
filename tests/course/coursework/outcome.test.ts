import { describe, expect, test } from 'vitest';
import { type Coursework, readCode } from '../../../src/course/coursework/coursework.ts';
import { outcomeOf, type Told } from '../../../src/course/coursework/outcome.ts';
import { slotsOf } from '../../../src/course/coursework/slots.ts';

const rules = { attempts: 2, hints: 1 };
const coursework: Coursework = {
  id: 'c',
  title: 'C',
  variants: 'own',
  seed: 1,
  pass: 2,
  tasks: [
    { id: 'read', kind: 'lesson', lesson: 'l', ...rules },
    { id: 'ask', kind: 'questions', title: 'Q', about: { make: 'm' }, level: 2, count: 3, pass: 2, ...rules },
    { id: 'wire', kind: 'job', job: 'three-port', ...rules },
  ],
};
const objectives = ['one', 'two'].map((id) => ({ id, says: id, tasks: [{ make: 'a' }, { make: 'b' }] }));
const slots = slotsOf(coursework, () => objectives);
const told = (slot: string, right: boolean, attempt = 1, hints = 0): Told => ({
  slot,
  right,
  attempt,
  hints,
});
const stateOf = (id: string, ...work: Told[]) => outcomeOf(coursework, slots, work).states.get(id);

test('There is a slot for each objective, question and job, in the order of the tasks', () => {
  expect(slots.map(({ id, kind, objective }) => [id, kind, objective])).toEqual([
    ['read/1', 'question', 'one'],
    ['read/2', 'question', 'two'],
    ['ask/1', 'question', 'questions-m'],
    ['ask/2', 'question', 'questions-m'],
    ['ask/3', 'question', 'questions-m'],
    ['wire/1', 'job', 'job-three-port'],
  ]);
  expect(slotsOf(coursework, () => objectives)).toEqual(slots);
});

describe('a slot', () => {
  test('is open, then tried, then lost', () => {
    expect(stateOf('wire/1')).toBe('open');
    expect(stateOf('wire/1', told('wire/1', false))).toBe('tried');
    expect(stateOf('wire/1', told('wire/1', false), told('wire/1', false, 2))).toBe('lost');
  });

  test('is right with one right answer, and stays so', () => {
    expect(stateOf('wire/1', told('wire/1', true), told('wire/1', false, 2))).toBe('right');
    expect(stateOf('wire/1', told('wire/1', false), told('wire/1', true, 2))).toBe('right');
  });

  test('is not right by an attempt too many or with a help too many', () => {
    expect(stateOf('wire/1', told('wire/1', true, 3))).toBe('tried');
    expect(stateOf('wire/1', told('wire/1', true, 1, 1))).toBe('right');
    expect(stateOf('wire/1', told('wire/1', true, 1, 2))).toBe('tried');
  });

  test('of another coursework is passed over', () => {
    const { right, of } = outcomeOf(coursework, slots, [told('moon/1', true)]);
    expect([right, of]).toEqual([0, 6]);
  });
});

test('A task passes with as many right as it needs, and the whole with as many tasks', () => {
  const work = [told('ask/1', true), told('ask/3', true), told('read/1', true)];
  const half = outcomeOf(coursework, slots, work);
  expect(half.tasks.map(({ right, needs, passed }) => [right, needs, passed])).toEqual([
    [1, 2, false],
    [2, 2, true],
    [0, 1, false],
  ]);
  expect([half.passed, half.over]).toEqual([false, false]);
  const whole = outcomeOf(coursework, slots, [...work, told('wire/1', true)]);
  expect([whole.passed, whole.over]).toEqual([true, false]);
  const rest = ['read/2', 'ask/2'].flatMap((id) => [told(id, false), told(id, false, 2)]);
  expect(outcomeOf(coursework, slots, [...work, told('wire/1', true), ...rest]).over).toBe(true);
});

test('A learner code is kept in capitals without spaces; what is none is refused', () => {
  expect(readCode(' student 07 ')).toBe('STUDENT07');
  for (const none of ['', 'a', '-a', 'a/b', '=1+1', 'x'.repeat(21), 'é1'])
    expect(readCode(none)).toBeUndefined();
});
