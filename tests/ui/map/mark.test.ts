import { describe, expect, it } from 'vitest';
import { markOf, marks, wordOf } from '../../../src/ui/map/mark.ts';

describe('the mark of a lesson on the map', () => {
  it.each([
    ['unseen', 0, 'unseen'],
    ['shaky', 0, 'shaky'],
    ['shaky', 2, 'shaky'],
    ['solid', 0, 'solid'],
    ['solid', 1, 'due'],
  ] as const)('of one that is %s with %d due is “%s”', (state, due, mark) => {
    expect(markOf({ state, due })).toBe(mark);
  });

  it('has a word of its own, so that colour never stands alone', () => {
    const words = marks.map(({ id }) => wordOf(id));
    expect(new Set(words).size).toBe(marks.length);
    expect(words.every((word) => word.length > 0)).toBe(true);
  });
});
