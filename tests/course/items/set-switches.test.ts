import { expect, test } from 'vitest';
import type { Item } from '../../../src/course/item.ts';
import { setSwitches } from '../../../src/course/items/set-switches.ts';
import { saySight, see } from '../../../src/course/items/sight.ts';
import { makeRandom } from '../../../src/course/random.ts';
import { evaluate, nextPlaces } from '../../../src/engine/circuit/plain.ts';
import { bitsOf, type Place } from '../../../src/engine/model/system.ts';
import { type Shown, shownOn, small } from './circuit-support.ts';
import { answersTo, shelf } from './support.ts';

const shown = shownOn(setSwitches, shelf.layoutIds, 18);

/** Where the valves end up when each time any one of those that can move does so, by chance. */
function wander({ system, wires, config }: Shown, inputs: number, seed: number): Place | undefined {
  const random = makeRandom(seed);
  let { place } = config;
  for (let move = 0; move < 60; move++) {
    const next = nextPlaces(system, evaluate(system, wires, { inputs, place }), place);
    if (next.length === 0) return place;
    place = random.pick(next);
  }
  return undefined;
}

const changes = ({ form, answer }: Item): string[] =>
  form.kind === 'set' && answer.kind === 'set'
    ? Object.entries(answer.settings).flatMap(([id, setting]) => (form.start[id] === setting ? [] : [id]))
    : [];

// Wandering by chance is the second opinion: the judge follows every order of movement.
test('settings are right exactly when what is asked for comes of them, whichever valve goes first', () => {
  let right = 0;
  let otherWay = 0;
  let wrong = 0;
  for (const one of shownOn(setSwitches, small, 18)) {
    const { item, system, wires } = one;
    const valves = item.id.endsWith('/3');
    for (const answer of answersTo(item, 24)) {
      if (answer.kind !== 'set') continue;
      const inputs = bitsOf(system, answer.settings);
      const ends = [1, 2, 3, 4, 5].map((seed) => wander(one, inputs, seed));
      const comes = ends.every((place) => {
        if (place === undefined) return false;
        const sight = see(system, wires, { inputs, place });
        return item.ask.endsWith(`happens: ${saySight(valves ? sight : { ...sight, stands: [] })}`);
      });
      const judged = item.judge(answer);
      expect(judged.right, `${item.id} ${JSON.stringify(answer)}`).toBe(comes);
      if (!comes) wrong++;
      else if (JSON.stringify(answer) !== JSON.stringify(item.answer)) otherWay++;
      else right++;
    }
  }
  expect(wrong).toBeGreaterThan(300);
  expect(right).toBeGreaterThan(30);
  // A thermostat that calls without its time switch changes nothing: more than one answer is right.
  expect(otherWay).toBeGreaterThan(30);
});

test('doing nothing is never right', () => {
  for (const { item } of shown) {
    const start = item.form.kind === 'set' ? item.form.start : {};
    expect(item.judge({ kind: 'set', settings: start }).right, item.id).toBe(false);
    expect(item.judge({ kind: 'set', settings: {} }).right, item.id).toBe(false);
  }
});

test('the last hint never tells all that is to be changed', () => {
  for (const { item } of shown)
    expect(item.hints[2], item.id).toMatch(
      changes(item).length > 1 ? /^One thing to change/ : /^One thing to leave/,
    );
});

test('where a part stays off, the note says at which contact its live stops', () => {
  const cold = shownOn(setSwitches, ['three-port'], 60).find(
    ({ item }) => item.ask.includes('Now: supply off') && item.ask.endsWith('The radiators get heat.'),
  );
  const settings = { supply: 'on', heating: 'on', room: 'satisfied' };
  const { right, notes } = cold?.item.judge({ kind: 'set', settings }) ?? { right: true, notes: [] };
  expect(right).toBe(false);
  expect(notes[0]?.cause).toContain('because the room thermostat is satisfied');
  expect(notes[0]?.consequence).toContain('The boiler fires.');
  expect(notes[0]?.look).toContain('heating');
});

test('layouts with one call are asked on every level', () => {
  for (const level of [1, 2, 3])
    expect(
      shownOn(setSwitches, ['combi-one-zone'], 30).some(({ item }) => item.id.endsWith(`/${level}`)),
    ).toBe(true);
});

test('every change in the answer is needed: without any one of them it does not come about', () => {
  for (const { item } of shown) {
    const { form, answer } = item;
    if (form.kind !== 'set' || answer.kind !== 'set') continue;
    for (const id of changes(item)) {
      const settings = { ...answer.settings, [id]: form.start[id] ?? '' };
      expect(item.judge({ kind: 'set', settings }).right, `${item.id} ${id}`).toBe(false);
    }
  }
});

test('no heat is asked for that a pump at a standstill would have to bring', () => {
  for (const layout of ['gravity-two-port', 'gravity-hot-water'])
    for (const { item } of shownOn(setSwitches, [layout], 60))
      expect(item.ask, item.id).not.toMatch(/happens: .*The pump does not run.*radiators get heat/);
});
