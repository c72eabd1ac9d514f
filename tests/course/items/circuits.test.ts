import { describe, expect, test } from 'vitest';
import { circuits } from '../../../src/course/items/circuits.ts';
import { addressOf, type Level } from '../../../src/course/task.ts';
import { dataOf } from './circuit-support.ts';
import { itemsOf, shelf } from './support.ts';

/*
 * What holds for every maker of questions about circuits.
 */

const SEEDS = 24;
/** Where there is nothing of the kind to ask, and why. */
const NONE: Readonly<Record<string, readonly string[]>> = {
  // A volt-free pair asks the boiler: no live goes to it.
  'where-stops': ['combi-volt-free'],
  'path-order': ['combi-volt-free'],
  // No valve.
  'valve-goes': ['combi-one-zone', 'combi-volt-free', 'gravity-hot-water', 'twin-immersion'],
  // The boiler is all there is.
  'what-works': ['combi-one-zone', 'combi-volt-free'],
};

describe.each(circuits.map((maker) => [maker.id, maker] as const))('%s', (id, maker) => {
  const made = new Map(
    shelf.layoutIds.map((layout) => [layout, itemsOf(maker, { layouts: [layout] }, SEEDS)]),
  );
  const items = [...made.values()].flat();

  test('asks about every layout that has something of the kind', () => {
    const none = [...made].filter(([, list]) => list.length === 0).map(([layout]) => layout);
    expect(none).toEqual(NONE[id] ?? []);
  });

  test('the same address always gives the same question', () => {
    const [layout = ''] = [...made].find(([, list]) => list.length > 0) ?? [];
    const again = itemsOf(maker, { layouts: [layout] }, SEEDS);
    expect(again.map(dataOf)).toEqual((made.get(layout) ?? []).map(dataOf));
    for (const { id: address } of again) {
      const [, , seed, level] = address.split('/');
      const task = { make: maker.id, layouts: [layout] };
      expect(address).toBe(addressOf(task, Number(seed), Number(level) as Level));
    }
  });

  test('300 seeds give at least 200 different questions', () => {
    const layouts = [...made].filter(([, list]) => list.length > 0).map(([layout]) => layout);
    const asked = itemsOf(maker, { layouts }, 600)
      .slice(0, 300)
      .map(({ ask, form, scene }) => JSON.stringify([ask, form, scene]));
    expect(new Set(asked).size).toBeGreaterThanOrEqual(200);
  });

  test('says what it is, and how it is answered', () => {
    for (const item of items) {
      expect(item.method).toBe(id);
      expect(item.form.kind !== 'choice').toBe(maker.produces);
      expect(item.answer.kind).toBe(item.form.kind);
    }
  });

  test('one question takes 30 ms or less in the middle of many', () => {
    const took = Array.from({ length: 60 }, (_, k) => {
      const layout = shelf.layoutIds[k % shelf.layoutIds.length] ?? '';
      const before = performance.now();
      maker.make(shelf, { make: id, layouts: [layout] }, 1000 + k, 2);
      return performance.now() - before;
    });
    expect(took.toSorted((a, b) => a - b)[30]).toBeLessThan(30);
  });
});
