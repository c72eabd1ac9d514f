import { expect, test } from 'vitest';
import { saySight, see } from '../../../src/course/items/sight.ts';
import { spotMistake } from '../../../src/course/items/spot-mistake.ts';
import { explorePlain } from '../../../src/engine/explore/plain.ts';
import type { Config } from '../../../src/engine/model/system.ts';
import { itemsOf, shelf } from './support.ts';

const layouts = ['three-port', 'two-two-ports'];
const items = itemsOf(spotMistake, { layouts }, 60);

test('there are items on every level', () => {
  for (const level of [1, 2, 3])
    expect(items.filter(({ id }) => id.endsWith(`/${level}`)).length).toBeGreaterThan(4);
});

// The plain exploration is the second opinion: it finds resting states one move at a time.
test('what is told is shown by the right answer, and by no other answer with these settings', () => {
  for (const item of items.slice(0, 15)) {
    const { form, answer, scene } = item;
    if (form.kind !== 'choice' || answer.kind !== 'choice' || !scene)
      throw new Error('a choice with a scene');
    const { system, right, wrong } = shelf.layout(scene.layout);
    const valves = !item.id.endsWith('/3');
    for (const { id } of form.options) {
      const wires = (wrong.find((one) => one.id === id) ?? right[0])?.wires ?? [];
      const rests: Config[] = [...explorePlain(system, wires).judged]
        .map((key) => ({ inputs: Math.floor(key / system.places), place: key % system.places }))
        .filter(({ inputs }) => inputs === scene.config.inputs);
      const shown = rests.some((config) => item.ask.includes(saySight(see(system, wires, config), valves)));
      expect(shown, `${item.id}: ${id}`).toBe(answer.chosen.includes(id));
    }
  }
});

test('a wrong choice is told what that mistake would show instead, with its state to look at', () => {
  for (const item of items) {
    if (item.form.kind !== 'choice') continue;
    for (const { id, says } of item.form.options) {
      const { right, notes } = item.judge({ kind: 'choice', chosen: [id] });
      if (right) continue;
      expect(notes[0]?.cause).toContain(says);
      expect(item.ask).not.toContain(notes[0]?.cause);
    }
  }
});
