import { expect, test } from 'vitest';
import type { Draft } from '../../../src/store/store.ts';
import { begunAt, keepBegun, readBegun } from '../../../src/ui/coursework/draft.ts';

/** The one draft that these tests need, kept in memory. */
function memory() {
  const drafts = new Map<string, Draft>();
  return {
    now: () => 1000,
    draft: async (place: string) => drafts.get(place),
    keepDraft: async (draft: Draft) => void drafts.set(draft.place, JSON.parse(JSON.stringify(draft))),
  };
}

test('What was begun comes back for its own attempt, slot and learner, and for no other', async () => {
  const store = memory();
  const begun = { attempt: 2, hints: 1, spent: 4200, answer: { kind: 'number', typed: '230 V' } } as const;
  await keepBegun(store, 'week AB12', 'live/1', begun);
  expect(await begunAt(store, 'week AB12', 'live/1', 2)).toEqual(begun);
  expect(await begunAt(store, 'week AB12', 'live/1', 3)).toBeUndefined();
  expect(await begunAt(store, 'week AB12', 'live/2', 2)).toBeUndefined();
  expect(await begunAt(store, 'week CD34', 'live/1', 2)).toBeUndefined();
});

test('What is damaged is passed over: a draft whole, a visit that is none alone', () => {
  const draft = (answer: unknown): Draft => ({ place: 'p', item: 'coursework', answer, at: 1 });
  for (const data of [
    null,
    3,
    {},
    { attempt: 1, hints: -1, spent: 0 },
    { attempt: 1, hints: 0, spent: 'long' },
  ])
    expect(readBegun(draft(data))).toBeUndefined();
  expect(readBegun(draft({ attempt: 1, hints: 0, spent: 5, visit: { acts: 7 } }))).toEqual({
    attempt: 1,
    hints: 0,
    spent: 5,
  });
});
