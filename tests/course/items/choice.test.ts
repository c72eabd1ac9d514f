import { expect, test } from 'vitest';
import { choice } from '../../../src/course/items/choice.ts';
import { order } from '../../../src/course/items/order.ts';
import { loadQuizzes } from '../../../src/files/site/quizzes.ts';
import { itemsOf, shelf } from './support.ts';

const quizzes = loadQuizzes().filter(({ choices }) => choices);

test('the seed decides which question is asked and which wrong options stand beside the right one', () => {
  for (const { id, choices = [] } of quizzes) {
    const items = itemsOf(choice, { quiz: id }, 60, 1);
    expect(new Set(items.map(({ ask }) => ask)).size).toBe(choices.length);
    for (const { form } of items)
      expect(form.kind === 'choice' && form.options.length).toBeGreaterThanOrEqual(4);
    expect(itemsOf(choice, { quiz: id }, 5)).toEqual(
      itemsOf(choice, { quiz: id }, 5).map((item) => ({ ...item, judge: expect.any(Function) })),
    );
  }
});

test('on level 3 all wrong options are shown', () => {
  const asked = itemsOf(choice, { quiz: 'competence' }, 20, 3);
  const longest = Math.max(...(shelf.quiz('competence').choices ?? []).map(({ options }) => options.length));
  expect(Math.max(...asked.map(({ form }) => (form.kind === 'choice' ? form.options.length : 0)))).toBe(
    longest,
  );
});

test('a wrong option is told in the author’s own words, and an answer nobody offered is wrong too', () => {
  const [item] = itemsOf(choice, { quiz: 'competence' }, 1);
  if (item?.form.kind !== 'choice') throw new Error('a choice');
  const authored = (shelf.quiz('competence').choices ?? []).flatMap(({ options }) => options);
  for (const { id, says } of item.form.options) {
    const { right, notes } = item.judge({ kind: 'choice', chosen: [id] });
    const own = authored.find((one) => one.id === id && one.says === says);
    expect(right).toBe(own?.right === true);
    if (!right)
      expect(notes).toEqual([
        { about: id, cause: own?.cause, consequence: own?.consequence, look: own?.look },
      ]);
  }
  expect(item.judge({ kind: 'choice', chosen: ['no-such'] }).right).toBe(false);
  expect(item.judge({ kind: 'choice', chosen: [] }).right).toBe(false);
});

test('questions and procedures are not taken for each other', () => {
  expect(() => itemsOf(choice, { quiz: 'safe-isolation' }, 1)).toThrow(
    'found the procedure "safe-isolation"',
  );
  expect(() => itemsOf(order, { quiz: 'competence' }, 1)).toThrow('found the questions of "competence"');
});
