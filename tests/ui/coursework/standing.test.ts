import { describe, expect, test } from 'vitest';
import type { Coursework } from '../../../src/course/coursework/coursework.ts';
import { outcomeOf } from '../../../src/course/coursework/outcome.ts';
import { type Slot, slotsOf } from '../../../src/course/coursework/slots.ts';
import type { Work } from '../../../src/course/coursework/work.ts';
import {
  attemptAt,
  beginWith,
  leftAt,
  mayAdd,
  nextAfter,
  strangerIn,
} from '../../../src/ui/coursework/standing.ts';

const WEEK: Coursework = {
  id: 'week',
  title: 'A week',
  variants: 'own',
  seed: 7,
  tasks: [
    {
      id: 'live',
      kind: 'questions',
      title: 'Live?',
      about: { make: 'live-terminals', layouts: ['three-port'] },
      level: 1,
      count: 2,
      attempts: 2,
      hints: 1,
    },
    { id: 'wire', kind: 'job', job: 'three-port', attempts: 3, hints: 0 },
  ],
};
const slots = slotsOf(WEEK, () => []);
const slot = (id: string): Slot => {
  const found = slots.find((one) => one.id === id);
  if (!found) throw new Error(id);
  return found;
};
const did = (id: string, attempt: number, right: boolean): Work => ({
  kind: 'question',
  slot: id,
  attempt,
  at: attempt * 1000,
  took: 500,
  hints: 0,
  right,
  item: 'x',
  answer: { kind: 'number', typed: '1' },
});
const outcome = (...work: Work[]) => outcomeOf(WEEK, slots, work);

describe('Goes', () => {
  test('Each answer uses one up, and a right one ends them', () => {
    const wrong = [did('live/1', 1, false)];
    expect(attemptAt(wrong, 'live/1')).toBe(2);
    expect(leftAt(outcome(...wrong), slot('live/1'), wrong)).toBe(1);
    const right = [...wrong, did('live/1', 2, true)];
    expect(leftAt(outcome(...right), slot('live/1'), right)).toBe(0);
    const lost = [...wrong, did('live/1', 2, false)];
    expect(leftAt(outcome(...lost), slot('live/1'), lost)).toBe(0);
  });

  test('Two answers to one attempt, from two tabs, use one go', () => {
    const twice = [did('live/1', 1, false), { ...did('live/1', 1, false), at: 1001 }];
    expect(leftAt(outcome(...twice), slot('live/1'), twice)).toBe(1);
  });

  test('An answer is taken only while its go is free and within the rules', () => {
    const done = [did('live/1', 1, false)];
    const may = (attempt: number, hints = 0) =>
      mayAdd(outcome(...done), slot('live/1'), done, { attempt, hints });
    expect(may(1)).toBe(false);
    expect(may(2)).toBe(true);
    expect(may(3)).toBe(false);
    expect(may(2, 2)).toBe(false);
    const right = [did('live/2', 1, true)];
    expect(mayAdd(outcome(...right), slot('live/2'), right, { attempt: 2, hints: 0 })).toBe(false);
  });
});

test('What comes next is the next that can still be answered, and after the last the first', () => {
  expect(nextAfter(slots, outcome())?.id).toBe('live/1');
  expect(nextAfter(slots, outcome(), 'live/1')?.id).toBe('live/2');
  expect(nextAfter(slots, outcome(did('live/2', 1, true)), 'live/1')?.id).toBe('wire/1');
  expect(nextAfter(slots, outcome(), 'wire/1')?.id).toBe('live/1');
  const only = outcome(did('live/1', 1, true), did('live/2', 1, true));
  expect(nextAfter(slots, only, 'wire/1')).toBeUndefined();
});

describe('Whoever opens a coursework', () => {
  const learner = { code: 'AB12' };
  const begun = beginWith(undefined, WEEK, learner, 1000);
  if (begun.kind !== 'sitting') throw new Error('expected a sitting');
  const kept = { ...begun.sitting, work: [did('live/1', 1, true)] };

  test('for the first time gets an empty sitting of their own', () => {
    expect(begun.sitting).toMatchObject({ id: 'week AB12', begun: 1000, work: [] });
  });

  test('again goes on, with dates and rules as they are now and a name that was added', () => {
    const later = { ...WEEK, due: '2027-01-01' };
    const again = beginWith(kept, later, { code: 'AB12', name: 'Sam' }, 5000);
    expect(again).toEqual({
      kind: 'sitting',
      sitting: { ...kept, at: 5000, coursework: later, learner: { code: 'AB12', name: 'Sam' } },
    });
  });

  test('is asked when the link deals other variants than those answered', () => {
    expect(beginWith(kept, { ...WEEK, seed: 8 }, learner, 5000).kind).toBe('changed');
    expect(beginWith(kept, { ...WEEK, variants: 'same' }, learner, 5000).kind).toBe('changed');
    // Nothing was answered: nothing is lost.
    expect(beginWith(begun.sitting, { ...WEEK, seed: 8 }, learner, 5000).kind).toBe('sitting');
  });
});

test('What the course does not have is named, whatever it is called', () => {
  const names = { jobs: { 'three-port': 'Wire it' }, callouts: {}, systems: {} };
  expect(strangerIn(slots, names)).toBeUndefined();
  expect(strangerIn(slots, { ...names, jobs: {} })).toBe('job “three-port”');
  const odd: Coursework = {
    ...WEEK,
    tasks: [{ id: 'a', kind: 'fault', system: 'constructor', level: 1, attempts: 1, hints: 0 }],
  };
  expect(
    strangerIn(
      slotsOf(odd, () => []),
      names,
    ),
  ).toBe('system “constructor”');
});
