import { expect, test } from 'vitest';
import { enoughToFail } from '../../../src/course/items/enough-to-fail.ts';
import { failureId } from '../../../src/engine/faults/failure.ts';
import { uncontrolledHeat } from '../../../src/engine/faults/hazards/uncontrolled-heat.ts';
import { layersOf } from '../../../src/engine/faults/layers.ts';
import { itemsOf, shelf } from './support.ts';

const chosenOf = (items: ReturnType<typeof itemsOf>) =>
  items.map(({ answer }) => (answer.kind === 'choice' ? answer.chosen : []));

// A thermostat welded on its call heats a vented store without end: nothing else is wired to stop it (Approved
// Document G, 2015 edition with 2016 amendments, 3.17 asks for two more devices on an unvented one).
test('on a vented three-port a welded cylinder thermostat is enough alone', () => {
  const items = itemsOf(enoughToFail, { layouts: ['three-port'] }, 40);
  expect(chosenOf(items).flat()).toContain('cyl-stat-welded-calling');
});

test('what is enough alone agrees with the search for layers', () => {
  for (const id of ['three-port', 'unvented-three-port', 'two-two-ports-unvented']) {
    const { system, right } = shelf.layout(id);
    const single = new Set(
      right.flatMap(({ wires }) =>
        layersOf(system, wires, uncontrolledHeat, 1).map(({ failures: [one] }) =>
          one ? failureId(system, one).replace(/[^\w-]+/g, '-') : '',
        ),
      ),
    );
    for (const chosen of chosenOf(itemsOf(enoughToFail, { layouts: [id] }, 20)))
      for (const one of chosen) if (one !== 'none') expect(single).toContain(one);
    if (single.size === 0)
      expect(chosenOf(itemsOf(enoughToFail, { layouts: [id] }, 20)).every(([one]) => one === 'none')).toBe(
        true,
      );
  }
});

test('a layout without a store that can overheat gives no question', () => {
  expect(itemsOf(enoughToFail, { layouts: ['combi-two-zones'] }, 10)).toEqual([]);
});

test('leaving out one that is enough is told from the state in which the heat goes on', () => {
  const item = itemsOf(enoughToFail, { layouts: ['three-port'] }, 40).find(
    ({ answer }) => answer.kind === 'choice' && answer.chosen.includes('cyl-stat-welded-calling'),
  );
  const note = item
    ?.judge({ kind: 'choice', chosen: ['none'] })
    .notes.find(({ about }) => about === 'cyl-stat-welded-calling');
  expect(note?.cause).toContain('It is live by way of');
  // A vented store has no relief valve and no tundish.
  expect(note?.consequence).not.toContain('tundish');
});
