import fc from 'fast-check';
import { deflateSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import type { Coursework, CourseworkTask } from '../../src/course/coursework/coursework.ts';
import { makers } from '../../src/course/items/index.ts';
import {
  checkCoursework,
  MOST_COURSEWORK,
  MOST_QUESTIONS,
  MOST_TASKS,
  parseCoursework,
  writeCoursework,
} from '../../src/files/coursework.ts';
import {
  courseworkFromLink,
  courseworkToLink,
  MOST_LINK,
  readCourseworkHash,
  writeCourseworkHash,
} from '../../src/files/coursework-link.ts';
import { loadCourseworks } from '../../src/files/site/coursework.ts';

const id = fc.stringMatching(/^[a-z][a-z0-9]{0,8}(-[a-z0-9]{1,6}){0,2}$/);
const words = fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' });
const level = fc.constantFrom(1, 2, 3);
const rules = { attempts: fc.integer({ min: 1, max: 10 }), hints: fc.integer({ min: 0, max: 3 }) };
const about = fc.record(
  {
    make: id,
    layouts: fc.array(id, { minLength: 1, maxLength: 4 }),
    quiz: id,
    sum: id,
    only: fc.array(id, { minLength: 1, maxLength: 3 }),
  },
  { requiredKeys: ['make'] },
);
const task = fc.oneof(
  fc.record({ kind: fc.constant('lesson'), lesson: id, ...rules }),
  fc.record({
    kind: fc.constant('questions'),
    title: words,
    about,
    level,
    count: fc.integer({ min: 1, max: 4 }),
    ...rules,
  }),
  fc.record({ kind: fc.constant('job'), job: id, ...rules }),
  fc.record({ kind: fc.constant('callout'), callout: id, ...rules }),
  fc.record({ kind: fc.constant('fault'), system: id, level, ...rules }),
);
const courseworks: fc.Arbitrary<Coursework> = fc
  .record(
    {
      id,
      title: words,
      says: fc.string({ minLength: 1, maxLength: 300, unit: 'grapheme' }),
      opens: fc.constant('2027-03-01'),
      due: fc.constant('2027-03-31'),
      variants: fc.constantFrom('own', 'same'),
      seed: fc.integer({ min: 0, max: 0xffff_ffff }),
      pass: fc.constant(1),
      tasks: fc.array(task, { minLength: 1, maxLength: 12 }),
    },
    { requiredKeys: ['id', 'title', 'variants', 'seed', 'tasks'] },
  )
  .map(
    ({ tasks, ...rest }) =>
      ({ ...rest, tasks: tasks.map((one, k) => ({ id: `t${k}`, ...one })) }) as unknown as Coursework,
  );

const [basics] = loadCourseworks();
const sample = basics as Coursework;

describe('a coursework', () => {
  test('is read from YAML as it was written, and from JSON', () => {
    fc.assert(
      fc.property(courseworks, (coursework) => {
        expect(parseCoursework(writeCoursework(coursework), 'c.yaml')).toEqual(coursework);
        expect(parseCoursework(JSON.stringify(coursework), 'c.json')).toEqual(coursework);
      }),
    );
  });

  test('is written with its keys in one order, whatever order it was made in', () => {
    const turned = Object.fromEntries(Object.entries(sample).reverse()) as unknown as Coursework;
    expect(writeCoursework(turned)).toBe(writeCoursework(sample));
    expect(writeCoursework(sample, 'https://example.org/schema/coursework.json')).toMatch(
      /^# yaml-language-server: \$schema=https:\/\/example\.org\/schema\/coursework\.json\n/,
    );
  });

  const [first] = sample.tasks;
  const job = { id: 'a', kind: 'job', job: 'three-port', attempts: 1, hints: 0 };
  const questions = {
    id: 'q',
    kind: 'questions',
    title: 'T',
    about: { make: 'choice', quiz: 'bands' },
    level: 1,
    count: 30,
    attempts: 1,
    hints: 0,
  };
  const of = (tasks: object[]) => ({ ...sample, tasks });
  test.each<[string, object, string]>([
    ['a misspelt key', { ...sample, titel: 'x' }, 'titel'.replace('titel', 'top level: expected one of')],
    ['no tasks', of([]), `tasks: expected a list of 1 to ${MOST_TASKS} tasks`],
    [
      '51 tasks',
      of(Array.from({ length: 51 }, (_, k) => ({ ...job, id: `t${k}` }))),
      'tasks: expected a list of 1 to 50',
    ],
    ['a task of no kind', of([{ ...job, kind: 'essay' }]), 'tasks[0].kind: expected a task with a kind'],
    [
      'eleven attempts',
      of([{ ...job, attempts: 11 }]),
      'tasks[0].attempts: expected a whole number of attempts from 1 to 10',
    ],
    ['four helps', of([{ ...job, hints: 4 }]), 'tasks[0].hints: expected how many helps may be open: 0 to 3'],
    ['half an attempt', of([{ ...job, attempts: 0.5 }]), 'tasks[0].attempts'],
    [
      '31 questions',
      of([{ ...questions, count: 31 }]),
      `tasks[0].count: expected how many questions: 1 to ${MOST_QUESTIONS}`,
    ],
    [
      '201 things to do',
      of([
        ...Array.from({ length: 6 }, (_, k) => ({ ...questions, id: `q${k}` })),
        ...Array.from({ length: 21 }, (_, k) => ({ ...job, id: `j${k}` })),
      ]),
      'tasks: expected at most 200 questions, jobs and visits together, found 201',
    ],
    ['an id twice', of([job, job]), 'tasks[1].id: expected an id that no other task has, found "a"'],
    ['more to pass than there is', of([{ ...job, pass: 2 }]), 'tasks[0].pass: expected at most 1'],
    ['more tasks to pass than there are', { ...of([job]), pass: 2 }, 'pass: expected at most 1'],
    ['a seed too big', { ...sample, seed: 2 ** 32 }, 'seed: expected a whole number from 0 to 4294967295'],
    ['a day that is none', { ...sample, due: '2027-13-01' }, 'due: expected a day such as 2027-03-31'],
    [
      'due before it opens',
      { ...sample, opens: '2027-03-02', due: '2027-03-01' },
      'due: expected a day that is not before 2027-03-02',
    ],
    [
      'an endless title',
      { ...sample, title: 'x'.repeat(121) },
      'title: expected a title of at most 120 letters',
    ],
    ['a variant of its own kind', { ...sample, variants: 'any' }, 'variants: expected own'],
    ['a task in place of a list', { ...sample, tasks: first }, 'tasks: expected a list'],
  ])('with %s is refused, and the place is named', (_, data, says) => {
    expect(() => parseCoursework(JSON.stringify(data), 'c.json')).toThrow(`c.json: ${says}`);
  });

  test('that is too long is refused before it is read', () => {
    expect(() => parseCoursework(' '.repeat(MOST_COURSEWORK + 1), 'c.yaml')).toThrow(
      'at most 100000 letters',
    );
  });
});

describe('names in a coursework', () => {
  const known = {
    lessons: ['back-feed'],
    jobs: ['three-port'],
    callouts: ['cold-showers'],
    systems: ['three-port'],
    layoutIds: ['three-port', 'two-zones'],
    quizzes: ['bands'],
    makers,
  };
  const check = (task: object) =>
    checkCoursework(
      { ...sample, tasks: [{ id: 'a', attempts: 1, hints: 0, ...task } as CourseworkTask] },
      known,
      'c',
    ).map(({ message }) => message);
  const asked = (given: object) => ({ kind: 'questions', title: 'T', about: given, level: 1, count: 1 });

  test.each([
    [
      { kind: 'lesson', lesson: 'back-fed' },
      'c: tasks[0].lesson: expected one of back-feed (did you mean "back-feed"?), found "back-fed"',
    ],
    [
      { kind: 'job', job: 'tree-port' },
      'c: tasks[0].job: expected one of three-port (did you mean "three-port"?), found "tree-port"',
    ],
    [{ kind: 'callout', callout: 'moon' }, 'c: tasks[0].callout: expected one of cold-showers, found "moon"'],
    [
      { kind: 'fault', system: 'moon', level: 1 },
      'c: tasks[0].system: expected one of three-port, found "moon"',
    ],
    [
      asked({ make: 'live-terminals', layouts: ['three-port', 'to-zones'] }),
      'c: tasks[0].about.layouts[1]: expected one of three-port, two-zones (did you mean "two-zones"?), found "to-zones"',
    ],
    [
      asked({ make: 'live-terminals' }),
      'c: tasks[0].about: expected layouts, for live-terminals, found none',
    ],
    [
      asked({ make: 'choice', quiz: 'band' }),
      'c: tasks[0].about.quiz: expected one of bands (did you mean "bands"?), found "band"',
    ],
  ])('that nothing bears are told with the nearest (%#)', (task, says) => {
    expect(check(task)).toEqual([says]);
  });

  test('that are there are passed over', () => {
    expect(check({ kind: 'job', job: 'three-port' })).toEqual([]);
    expect(check(asked({ make: 'choice', quiz: 'bands' }))).toEqual([]);
    expect(check(asked({ make: 'live-termnals' }))[0]).toMatch(/did you mean "live-terminals"/);
  });
});

describe('a link', () => {
  const packed = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64url');

  test('carries a coursework whole, in letters that every address may have', () => {
    fc.assert(
      fc.property(courseworks, (coursework) => {
        const text = courseworkToLink(coursework);
        expect(text).toMatch(/^[A-Za-z0-9_-]+$/);
        expect(courseworkFromLink(text)).toEqual(coursework);
      }),
    );
  });

  test('of the samples is short enough for a mail', () => {
    for (const one of loadCourseworks()) expect(courseworkToLink(one).length).toBeLessThan(1800);
  });

  test('with one letter changed is refused in a sentence, or still is a sound coursework', () => {
    const text = courseworkToLink(sample);
    fc.assert(
      fc.property(fc.nat({ max: text.length - 1 }), fc.constantFrom(...'aZ09-_.%'), (at, letter) => {
        const read = courseworkFromLink(text.slice(0, at) + letter + text.slice(at + 1));
        if ('problem' in read) expect(read.problem).toMatch(/^[A-Z].*\.$/);
        else expect(parseCoursework(JSON.stringify(read), 'c')).toEqual(read);
      }),
    );
  });

  test('that would swell into something huge is refused, and costs no more room than a coursework', () => {
    const padded = new TextEncoder().encode(JSON.stringify(sample) + ' '.repeat(8_000_000));
    const bomb = packed(Uint8Array.of(1, ...deflateSync(padded, { level: 9 })));
    expect(bomb.length).toBeLessThan(MOST_LINK);
    expect(courseworkFromLink(bomb)).toEqual({ problem: 'The link is damaged: copy it again, whole.' });
  });

  test.each([
    ['nothing', '', 'The link is damaged: copy it again, whole.'],
    ['something too long', 'A'.repeat(MOST_LINK + 1), 'The link is too long to be a coursework.'],
    ['another version', packed(Uint8Array.of(2, 0)), 'The link was made by another version of this page.'],
    [
      'other data',
      packed(Uint8Array.of(1, ...deflateSync(new TextEncoder().encode('{"id": 7}')))),
      /^The link: id: expected an id/,
    ],
    [
      'a prototype',
      packed(
        Uint8Array.of(
          1,
          ...deflateSync(
            new TextEncoder().encode(JSON.stringify(sample).replace('{', '{"__proto__":{"polluted":true},')),
          ),
        ),
      ),
      /./,
    ],
  ])('with %s says what is wrong', (_, text, says) => {
    const read = courseworkFromLink(text);
    if ('problem' in read) expect(read.problem).toMatch(says);
    else expect(Object.keys(read)).not.toContain('__proto__');
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});

describe('the fragment of an address', () => {
  test('carries the coursework, and the learner where it is known', () => {
    const name = 'Zoë & Ann #1';
    const hash = writeCourseworkHash({ coursework: sample, code: 'STUDENT-7', name });
    expect(readCourseworkHash(hash)).toEqual({ coursework: sample, code: 'STUDENT-7', name });
    expect(readCourseworkHash(writeCourseworkHash({ coursework: sample }))).toEqual({ coursework: sample });
  });

  test('without a coursework is none of ours', () => {
    expect(readCourseworkHash('')).toBeUndefined();
    expect(readCourseworkHash('#heading')).toBeUndefined();
    expect(readCourseworkHash('#c=')).toEqual({ problem: 'The link is damaged: copy it again, whole.' });
  });

  test('puts a code in order, and leaves out what cannot be one', () => {
    const link = courseworkToLink(sample);
    expect(readCourseworkHash(`#c=${link}&code=student%207`)).toMatchObject({ code: 'STUDENT7' });
    expect(readCourseworkHash(`#c=${link}&code=../etc`)).not.toHaveProperty('code');
    expect(readCourseworkHash(`#c=${link}&name=${'x'.repeat(500)}`)).toMatchObject({ name: 'x'.repeat(80) });
  });
});
