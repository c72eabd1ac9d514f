import { expect, test } from 'vitest';
import { deadTest } from '../../../src/course/items/dead-test.ts';
import { meterOn, shownOn } from './circuit-support.ts';
import { shelf } from './support.ts';

const shown = shownOn(deadTest, shelf.layoutIds, 18);

// The ohm-meter is the second opinion: a nodal solution through every motor and coil, where the maker asks only what is joined.
test('what is to be marked reads no ohms, and what is not reads at least a heating element', () => {
  expect(shown.length).toBeGreaterThan(200);
  for (const one of shown) {
    const { form, answer, scene, id } = one.item;
    if (form.kind !== 'mark' || answer.kind !== 'mark') throw new Error('marks are asked for');
    const { ohms } = meterOn(one);
    for (const terminal of form.among) {
      const read = ohms(scene?.lit?.[0] ?? '', terminal.id);
      if (answer.marked.includes(terminal.id)) expect(read, `${id} ${terminal.id}`).toBeLessThan(0.1);
      // 17.6 Ω is 3 kW at 230 V, the least that any load here has.
      else expect(read, `${id} ${terminal.id}`).toBeGreaterThan(17);
    }
  }
});

test('every supply is off while it is tested, and no valve has moved', () => {
  for (const { item, system, config } of shown) {
    for (const { input } of system.supplies) expect((config.inputs >> input) & 1, item.id).toBe(0);
    expect(config.place, item.id).toBe(0);
  }
});

test('a wrong mark is told what stands between the two leads', () => {
  for (const { item } of shown.slice(0, 80)) {
    const { form, answer } = item;
    if (form.kind !== 'mark' || answer.kind !== 'mark') continue;
    for (const { id } of form.among) {
      const has = answer.marked.includes(id);
      const marked = has ? answer.marked.filter((one) => one !== id) : [...answer.marked, id];
      const { right, notes } = item.judge({ kind: 'mark', marked });
      expect(right).toBe(false);
      expect(notes.map(({ about }) => about)).toEqual([id]);
      expect(notes[0]?.cause).toMatch(has ? /are joined/ : /is open at|no way through/);
    }
  }
});
