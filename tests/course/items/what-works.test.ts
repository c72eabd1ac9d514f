import { expect, test } from 'vitest';
import { whatWorks } from '../../../src/course/items/what-works.ts';
import type { System } from '../../../src/engine/model/system.ts';
import { meterOn, shownOn } from './circuit-support.ts';
import { answersTo, shelf, textOf } from './support.ts';

const shown = shownOn(whatWorks, shelf.layoutIds, 18);

/** Names of the loads that an option is about: all of a group must work, of a list in it any one. */
function loadsOf(system: System, option: string): (readonly string[])[] {
  const part = system.parts.find(({ id }) => option === id || option === `${id}-motor`);
  if (!part) throw new Error(`no part for ${option}`);
  const { id, kind } = part;
  const drive = kind.motion?.drive ?? [];
  const groups: readonly (string | readonly string[])[] = option === id ? (kind.work?.needs ?? []) : [drive];
  return groups.map((group) => [group].flat().map((load) => `${id}/${load}`));
}

const isOwnLoop = (system: System, name: string): boolean =>
  system.loads.some(
    ({ part, spec }) => spec.ownLoop === true && `${system.parts[part]?.id}/${spec.id}` === name,
  );

// The ammeter is the second opinion: it solves for the current through each motor, element and board.
test('what works takes a full wave of current, and what does not work takes none or half of one', () => {
  let asked = 0;
  for (const one of shown) {
    const { form, answer, id } = one.item;
    if (form.kind !== 'choice' || answer.kind !== 'choice') throw new Error('a choice');
    const { amps } = meterOn(one);
    for (const option of form.options) {
      const groups = loadsOf(one.system, option.id);
      // A volt-free pair carries no mains current.
      if (groups.flat().some((name) => isOwnLoop(one.system, name))) continue;
      const full = groups.every((group) => group.some((name) => amps(name).wave === 'full'));
      expect(full, `${id} ${option.id}`).toBe(answer.chosen.includes(option.id));
      asked++;
    }
  }
  expect(asked).toBeGreaterThan(400);
});

test('what is chosen wrongly and what is left out are both told, each in its own words', () => {
  for (const { item } of shown.slice(0, 60)) {
    const { form, answer } = item;
    if (form.kind !== 'choice' || answer.kind !== 'choice') continue;
    for (const given of answersTo(item, 12)) {
      if (given.kind !== 'choice') continue;
      const off = form.options.filter(({ id }) => given.chosen.includes(id) !== answer.chosen.includes(id));
      const { right, notes } = item.judge(given);
      expect(right).toBe(off.length === 0);
      expect(notes.map(({ about }) => about)).toEqual(off.map(({ id }) => id));
      expect(new Set(notes.map(textOf)).size).toBe(notes.length);
    }
  }
});

test('layouts with only two things that can work are asked too', () => {
  for (const layout of ['gravity-hot-water', 'twin-immersion'])
    expect(shownOn(whatWorks, [layout], 30).length, layout).toBeGreaterThan(5);
});

test('a valve held at mid is told so: half of each wave holds its motor, and does not drive it', () => {
  const held = shownOn(whatWorks, ['three-port'], 120).filter(
    ({ item }) =>
      item.ask.includes('is at mid') &&
      item.form.kind === 'choice' &&
      item.form.options.some(({ id }) => id === 'three-port-motor'),
  );
  expect(held.length).toBeGreaterThan(2);
  for (const { item } of held) {
    const { right, notes } = item.judge({ kind: 'choice', chosen: ['three-port-motor'] });
    expect(right).toBe(false);
    expect(notes.find(({ about }) => about === 'three-port-motor')?.cause).toContain('half of each wave');
  }
});

test('a part is asked about once: a pump is not its own motor', () => {
  for (const { item } of shownOn(whatWorks, ['thermal-store'], 24))
    if (item.form.kind === 'choice')
      expect(item.form.options.map(({ id }) => id)).not.toContain('zone-pump-motor');
});
