import { expect, test } from 'vitest';
import type { CourseworkTask } from '../../../src/course/coursework/coursework.ts';
import { outcomeOf } from '../../../src/course/coursework/outcome.ts';
import { slotsOf } from '../../../src/course/coursework/slots.ts';
import { awayWords, dayWords, passOf, rulesOf } from '../../../src/ui/coursework/words.ts';

test('Days are said as people say them, and counted over months and leap years', () => {
  expect(dayWords('2027-03-31')).toBe('31 March 2027');
  expect(awayWords('2027-03-31', '2027-03-31')).toBe('today');
  expect(awayWords('2027-04-01', '2027-03-31')).toBe('tomorrow');
  // 2028 is a leap year: 28 February to 1 March is two days.
  expect(awayWords('2028-03-01', '2028-02-28')).toBe('in 2 days');
  expect(awayWords('2027-03-30', '2027-03-31')).toBe('1 day ago');
  expect(awayWords('nonsense', '2027-03-31')).toBe('');
});

const questions: CourseworkTask = {
  id: 'live',
  kind: 'questions',
  title: 'Live?',
  about: { make: 'live-terminals', layouts: ['three-port'] },
  level: 1,
  count: 3,
  attempts: 2,
  hints: 0,
  pass: 2,
};
const say = (task: CourseworkTask) => {
  const coursework = { id: 'a', title: 'A', variants: 'own', seed: 1, tasks: [task] } as const;
  const slots = slotsOf(coursework, () => []);
  const [outcome] = outcomeOf(coursework, slots, []).tasks;
  return outcome && rulesOf(outcome, slots[0]);
};

test('The rules of a task stand in one line', () => {
  expect(say(questions)).toBe('2 of 3 must be right. 2 goes at each, no hints.');
  expect(say({ ...questions, pass: 3, hints: 2 })).toBe(
    'All 3 must be right. 2 goes at each, up to 2 hints.',
  );
  expect(say({ id: 'a', kind: 'job', job: 'three-port', attempts: 1, hints: 1 })).toBe('1 go, up to 1 help.');
  expect(say({ id: 'a', kind: 'fault', system: 'three-port', level: 1, attempts: 1, hints: 0 })).toBe(
    '1 go, no help with the search.',
  );
});

test('What passes the whole is said as it is', () => {
  const whole = (tasks: number, pass?: number) =>
    passOf({
      id: 'a',
      title: 'A',
      variants: 'own',
      seed: 1,
      tasks: Array.from({ length: tasks }, (_, k) => ({ ...questions, id: `t${k}` })),
      ...(pass !== undefined && { pass }),
    });
  expect(whole(1)).toBe('It passes when the task passes.');
  expect(whole(3)).toBe('It passes when all 3 tasks pass.');
  expect(whole(3, 2)).toBe('It passes when 2 of the 3 tasks pass.');
});
