import { expect, test } from 'vitest';
import type { Form } from '../../../src/course/item.ts';
import { makeItem } from '../../../src/course/items/index.ts';
import { objectivesOf } from '../../../src/course/outline.ts';
import { seedOf } from '../../../src/course/random.ts';
import { loadOutline, loadShelf } from '../../../src/files/site/course.ts';
import { kindOf, trialInteractions } from '../../../src/ui/lms/interactions.ts';
import { response12 } from '../../../src/ui/lms/limits/scorm-12.ts';
import { response2004 } from '../../../src/ui/lms/limits/scorm-2004.ts';
import type { Response } from '../../../src/ui/lms/report.ts';
import { response12Of, responseOf } from '../../../src/ui/lms/scorm/responses.ts';

const outline = loadOutline();
const kinds: Readonly<Record<Form['kind'], string>> = {
  choice: 'choice',
  mark: 'choice',
  place: 'match',
  set: 'match',
  order: 'order',
  number: 'number',
};

test('every question of the course is told as the kind that it is', () => {
  const shelf = loadShelf();
  for (const { id, tasks } of objectivesOf(outline))
    for (const task of tasks) {
      const { id: item, form } = makeItem(shelf, task, seedOf(id), 1);
      expect(kindOf({ item }), item).toBe(kinds[form.kind]);
    }
  expect(kindOf({ item: 'callout/three-port/4711/2' })).toBe('work');
});

test('a trial has a name of its own that every standard takes; what came back from a platform is not told again', () => {
  const trial = {
    at: 1_800_000_000_000,
    objective: objectivesOf(outline)[0]?.id ?? '',
    item: 'live-terminals/three-port/1/1',
    method: 'live-terminals',
    right: true,
    attempt: 1,
    hints: 0,
    shown: 0,
    took: 1,
    mode: 'lesson',
  } as const;
  const again = { ...trial, attempt: 2, at: trial.at + 1 };
  const [one, two, ...none] = trialInteractions(outline, [trial, again, { ...trial, item: 'resumed/1-0/1' }]);
  expect(none).toEqual([]);
  expect(one?.key).toMatch(/^[A-Za-z0-9_-]{1,100}$/);
  expect(one?.key).not.toBe(two?.key);
  expect(one?.says).toBe(objectivesOf(outline)[0]?.says);
});

const responses: readonly Response[] = [
  { kind: 'choice', ids: ['strip/1', 'a b,c[.]'] },
  { kind: 'choice', ids: [] },
  { kind: 'order', ids: ['spur', 'programmer'] },
  { kind: 'match', pairs: Array.from({ length: 60 }, (_, k) => [`boiler/${k}`, `strip/${k}`]) },
  { kind: 'match', pairs: [['valve', 'on']] },
  { kind: 'number', typed: '28,5 mm' },
  { kind: 'number', typed: 'about ten' },
];
test.each(responses)('a response is within the standards: %o', (response) => {
  for (const kind of [response.kind, 'work'] as const) {
    const later = responseOf({ kind, response });
    expect(response2004(later.type)(later.response ?? '')).toBeUndefined();
    const older = response12Of({ kind, response });
    expect(response12(older.type)(older.response ?? '')).toBeUndefined();
  }
});
