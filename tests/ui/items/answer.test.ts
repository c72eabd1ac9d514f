import { expect, test } from 'vitest';
import { makeItem } from '../../../src/course/items/index.ts';
import { lessonsOf } from '../../../src/course/outline.ts';
import { seedOf } from '../../../src/course/random.ts';
import { loadOutline, loadShelf } from '../../../src/files/site/course.ts';
import { emptyAnswer, missing, readAnswer, sayAnswer } from '../../../src/ui/items/answer.ts';

const shelf = loadShelf();
const items = lessonsOf(loadOutline()).flatMap(({ objectives }) =>
  objectives.flatMap(({ id, tasks }) =>
    tasks.slice(0, 1).map((task) => makeItem(shelf, task, seedOf(id), 1)),
  ),
);

test('A right answer of every objective comes back from the device as it was kept, and can be said', () => {
  expect(items.length).toBeGreaterThan(20);
  for (const { form, answer, judge, id } of items) {
    const back = readAnswer(form, JSON.parse(JSON.stringify(answer)));
    expect(back, id).toEqual(answer);
    expect(missing(form, answer), id).toBeUndefined();
    if (back) expect(judge(back).right, id).toBe(true);
    expect(sayAnswer(form, answer).join(''), id).toMatch(/\w/);
  }
});

test('What the device hands back is refused where it does not fit the question', () => {
  for (const { form } of items) {
    for (const data of [undefined, null, 7, 'mark', [], {}, { kind: form.kind }])
      expect(readAnswer(form, data)).toBeUndefined();
    expect(
      readAnswer(form, {
        kind: form.kind,
        chosen: ['x'],
        marked: ['x'],
        landed: { a: 'x' },
        settings: {},
        steps: ['x'],
      }),
    ).toBeUndefined();
  }
});

test('Nothing given yet is told by what is missing, except where something always stands', () => {
  for (const { form } of items)
    expect(missing(form, emptyAnswer(form)) === undefined).toBe(form.kind === 'set' || form.kind === 'order');
});
