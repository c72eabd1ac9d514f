import { expect, test } from 'vitest';
import { clues } from '../../../src/course/items/clues.ts';
import { nameLayout } from '../../../src/course/items/name-layout.ts';
import { itemsOf, shelf } from './support.ts';

const layouts = [
  'three-port',
  'diverter-three-port',
  'two-two-ports',
  'unvented-three-port',
  'gravity-hot-water',
  'gravity-two-port',
  'overrun-three-port',
];
const items = itemsOf(nameLayout, { layouts }, 60);
const clue = (id: string, layout: string) => clues.find((one) => one.id === id)?.see(shelf.layout(layout));

// Published: gravity hot water fires at once; a mid-position valve rests at the cylinder, two-ports rest shut, and a
// three-port that has heated the rooms stays over with its motor live (the shared facts, E1, E3, E5 and D3).
test('clues come out as the trade knows these layouts', () => {
  expect(clue('valves', 'gravity-hot-water')).toBe('There is no motorised valve.');
  expect(clue('at-rest', 'three-port')).toContain('a way is open to the cylinder coil');
  expect(clue('at-rest', 'two-two-ports')).toContain('no way is open');
  expect(clue('water-fires', 'three-port')).toContain('at once');
  expect(clue('water-fires', 'two-two-ports')).toContain('only after something has moved');
  expect(clue('after-heating', 'three-port')).toContain('open to the radiators');
  expect(clue('after-heating', 'two-two-ports')).toContain('goes back to rest');
  expect(clue('grey', 'three-port')).toContain('reads 0 V');
  expect(clue('grey', 'two-two-ports')).toContain('reads 230 V');
});

test('the evidence leaves one layout only', () => {
  expect(items.length).toBeGreaterThan(20);
  for (const { ask, form, answer } of items) {
    if (form.kind !== 'choice' || answer.kind !== 'choice') throw new Error('a choice');
    const fits = form.options.filter(({ id }) =>
      clues.every(({ see }) => {
        const target = see(shelf.layout(answer.chosen[0] ?? ''));
        const given = target !== undefined && ask.includes(target);
        const own = see(shelf.layout(id));
        return !given || own === undefined || own === target;
      }),
    );
    expect(fits.map(({ id }) => id)).toEqual(answer.chosen);
  }
});

test('the valves are counted for beginners only', () => {
  for (const { ask, id } of items)
    if (!id.endsWith('/1')) expect(ask).not.toMatch(/On the pipes|no motorised valve/);
});

test('a wrong layout is told which evidence speaks against it, and what it would have shown', () => {
  for (const item of items) {
    if (item.form.kind !== 'choice') continue;
    for (const { id, says } of item.form.options) {
      const { right, notes } = item.judge({ kind: 'choice', chosen: [id] });
      if (!right)
        expect(notes[0]?.cause).toMatch(new RegExp(`It does not fit “${says}”. Here: .* With “${says}”: `));
    }
  }
});
