import { expect, test } from 'vitest';
import { type Card, freshCallout, systemsWith } from '../../../src/course/callouts/fresh.ts';
import { makeRandom } from '../../../src/course/random.ts';
import { trial } from '../progress/support.ts';

const card = (id: string, level: 1 | 2 | 3, given: Partial<Card> = {}): Card => ({
  id,
  level,
  system: 'three-port',
  family: 'no-heating',
  ...given,
});
const cards = [
  card('easy', 1),
  card('middling', 2),
  card('hard', 3),
  card('other', 1, { family: 'no-hot-water', system: 'two-two-ports' }),
];
const fresh = (level: 1 | 2 | 3, ...known: string[]) =>
  freshCallout(
    cards,
    'no-heating',
    level,
    known.map((id) => trial({ item: `callout/${id}` })),
    makeRandom(1),
  );

test('A fresh callout is of the family that is due and of the nearest level', () => {
  expect(fresh(1)).toEqual({ kind: 'authored', id: 'easy' });
  expect(fresh(3)).toEqual({ kind: 'authored', id: 'hard' });
});

test('A callout that the learner has visited does not come again, and there is an end to them', () => {
  expect(fresh(3, 'hard')).toEqual({ kind: 'authored', id: 'middling' });
  expect(fresh(3, 'easy', 'middling', 'hard')).toBeUndefined();
});

test('Of callouts equally near, chance decides', () => {
  const many = Array.from({ length: 9 }, (_, k) => card(`c${k}`, 1));
  const dealt = Array.from({ length: 30 }, (_, seed) =>
    freshCallout(many, 'no-heating', 1, [], makeRandom(seed)),
  );
  expect(new Set(dealt.map((one) => JSON.stringify(one))).size).toBeGreaterThan(3);
});

test('Made callouts of a family are looked for where an authored one shows that there are any', () => {
  expect(systemsWith(cards, 'no-heating')).toEqual(['three-port']);
  expect(systemsWith(cards, 'noise-or-waste')).toEqual([]);
});
