import { expect, test } from 'vitest';
import { parseCoursework } from '../../../src/files/coursework.ts';
import { writeCoursework } from '../../../src/files/coursework-write.ts';
import { GET } from '../../../src/pages/author/known.json.ts';
import {
  courseworkOf,
  draftOf,
  freshCoursework,
  readCourseworkDraft,
  type TaskSubject,
  withChange,
  withTask,
} from '../../../src/ui/author/coursework/draft.ts';
import { minutesOf, nameTask, sayMinutes, slotCount } from '../../../src/ui/author/coursework/measure.ts';
import { courseworkTroubles, nameOfPlace } from '../../../src/ui/author/coursework/troubles.ts';
import type { Known } from '../../../src/ui/author/known.ts';

const known = (await GET().json()) as Known;
const subjects: readonly TaskSubject[] = [
  { kind: 'lesson', lesson: known.lessons[0]?.slug ?? '' },
  { kind: 'job', job: 'unvented-three-port' },
  { kind: 'callout', callout: known.callouts[0]?.id ?? '' },
  { kind: 'fault', system: 'three-port', level: 2 },
  {
    kind: 'questions',
    title: 'Live terminals',
    about: { make: 'live-terminals', layouts: ['three-port'] },
    level: 1,
    count: 4,
  },
];
const whole = {
  ...freshCoursework(4711),
  id: 'a-week',
  title: 'A week',
  tasks: subjects.reduce(withTask, [] as ReturnType<typeof withTask>),
};
const troubles = (change: Partial<typeof whole>) =>
  courseworkTroubles({ ...whole, ...change }, known).map(
    ({ place, says }) => `${nameOfPlace(place)}: ${says}`,
  );

test('a coursework of every kind of task has nothing to put right and comes back from its file', () => {
  expect(troubles({})).toEqual([]);
  const file = writeCoursework(courseworkOf(whole));
  expect(draftOf(parseCoursework(file, 'a-week.yaml'))).toEqual(whole);
  expect(readCourseworkDraft(JSON.parse(JSON.stringify(whole)))).toEqual(whole);
});

test('what is empty is left out of the file', () => {
  expect(Object.keys(courseworkOf(whole))).toEqual(['id', 'title', 'variants', 'seed', 'tasks']);
  expect(courseworkOf({ ...whole, says: 'Hello', due: '2027-03-31', pass: 2 })).toMatchObject({
    says: 'Hello',
    due: '2027-03-31',
    pass: 2,
  });
});

test('the same thing twice gets a name of its own, and the rules of the task before', () => {
  const [first] = withTask([], subjects[1] as TaskSubject);
  const strict = withChange(first ? [first] : [], 'unvented-three-port', { attempts: 1, hints: 0 });
  expect(
    withTask(strict, subjects[1] as TaskSubject).map(({ id, attempts, hints }) => [id, attempts, hints]),
  ).toEqual([
    ['unvented-three-port', 1, 0],
    ['unvented-three-port-2', 1, 0],
  ]);
});

test('a pass that asks for all is not written', () => {
  const id = whole.tasks[4]?.id ?? '';
  expect(withChange(whole.tasks, id, { pass: 3 })[4]).toHaveProperty('pass', 3);
  expect(withChange(withChange(whole.tasks, id, { pass: 3 }), id, { pass: 0 })[4]).not.toHaveProperty('pass');
});

test('every trouble names its field', () => {
  expect(troubles({ title: '', tasks: [] })).toEqual([
    'Title: Expected a title of at most 120 letters.',
    'Tasks: Expected a list of 1 to 50 tasks; found an empty list.',
  ]);
  const id = whole.tasks[4]?.id ?? '';
  expect(troubles({ tasks: withChange(whole.tasks, id, { count: Number.NaN }) })[0]).toMatch(
    /^Task 5, how many: Expected how many questions: 1 to 30/,
  );
  expect(troubles({ opens: '2027-03-31', due: '2027-03-01' })[0]).toMatch(
    /^To be handed in by: Expected a day/,
  );
  expect(troubles({ tasks: withTask([], { kind: 'job', job: 'unvented-three-prt' }) })[0]).toMatch(
    /^Task 1.*did you mean "unvented-three-port"/,
  );
});

test('more to pass than the lesson has is told, though only who knows the lesson can tell', () => {
  const [lesson] = whole.tasks;
  const most = lesson ? slotCount(lesson, known) : 0;
  expect(troubles({ tasks: withChange(whole.tasks, lesson?.id ?? '', { pass: most + 1 }) })[0]).toBe(
    `Task 1, must be right: Expected at most ${most}: the task has no more; found ${most + 1}.`,
  );
});

test('every task has a name, a number of things to do and minutes', () => {
  for (const task of whole.tasks) {
    expect(nameTask(task, known).title).not.toBe('');
    expect(slotCount(task, known)).toBeGreaterThan(0);
    expect(minutesOf(task, known)).toBeGreaterThan(0);
  }
  expect([3, 44, 100, 120].map(sayMinutes)).toEqual([
    'about 5 minutes',
    'about 45 minutes',
    'about 1½ hours',
    'about 2 hours',
  ]);
});

test('what was kept and is no draft is passed over', () => {
  for (const bad of [null, [], {}, { ...whole, tasks: [{ kind: 'job' }] }, { ...whole, seed: '1' }])
    expect(readCourseworkDraft(bad)).toBeUndefined();
});
