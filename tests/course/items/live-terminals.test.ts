import { expect, test } from 'vitest';
import { liveTerminals } from '../../../src/course/items/live-terminals.ts';
import { configKey, explorePlain } from '../../../src/engine/explore/plain.ts';
import { meterOn, shownOn, small, voltsAt } from './circuit-support.ts';
import { itemsOf, shelf } from './support.ts';

const shown = shownOn(liveTerminals, shelf.layoutIds, 18);

// The meter is the second opinion: it solves for volts and knows nothing of what is joined to what.
test('a terminal that is to be marked reads 230 V to neutral, and one that is not reads nothing', () => {
  for (const one of shown) {
    const { form, answer, id } = one.item;
    if (form.kind !== 'mark' || answer.kind !== 'mark') throw new Error('marks are asked for');
    const meter = meterOn(one);
    for (const terminal of form.among) {
      const volts = voltsAt(one, meter, terminal.id);
      if (answer.marked.includes(terminal.id)) expect(volts, `${id} ${terminal.id}`).toBeCloseTo(230, 0);
      else expect(volts, `${id} ${terminal.id}`).toBeLessThan(5);
    }
  }
});

// The plain exploration finds resting states one move at a time; the maker asks the fast one.
test('the state asked about is one in which the valves really can rest', () => {
  for (const id of small) {
    for (const { item, system, wires, config } of shownOn(liveTerminals, [id], 9))
      expect(explorePlain(system, wires).judged.has(configKey(system, config)), item.id).toBe(true);
  }
});

test('a harder question has more terminals, and always some that are live and some that are not', () => {
  const counts = ([1, 2, 3] as const).map((level) =>
    itemsOf(liveTerminals, { layouts: ['unvented-three-port'] }, 20, level).map(({ form, answer }) => {
      const among = form.kind === 'mark' ? form.among.length : 0;
      const marked = answer.kind === 'mark' ? answer.marked.length : 0;
      expect(among).toBeGreaterThan(3);
      expect(marked).toBeGreaterThan(0);
      expect(marked).toBeLessThan(among);
      return among;
    }),
  );
  expect(counts.map((among) => Math.max(...among))).toEqual([5, 7, 9]);
});

test('only the hardest questions show a classic mistake, and they say which', () => {
  const wrongly = shownOn(liveTerminals, ['three-port', 'two-two-ports'], 60).filter(
    ({ layout, wires }) => !layout.right.some((right) => right.wires === wires),
  );
  expect(wrongly.length).toBeGreaterThan(3);
  for (const { item, layout, wires } of wrongly) {
    const mistake = layout.wrong.find((wrong) => wrong.wires === wires);
    expect(item.id).toMatch(/\/3$/);
    expect(item.ask.toLowerCase()).toContain(mistake?.title.toLowerCase());
  }
});

test('a live terminal left out is told the way the live takes to it, and what would stop without it', () => {
  // Heating alone on a three-port that has gone over: 6 gets its live from orange.
  const found = itemsOf(liveTerminals, { layouts: ['three-port'] }, 1500, 2).find(
    ({ ask, form, scene }) =>
      ask.includes('hot water off, heating on, room calling and cylinder satisfied') &&
      scene?.wires === shelf.layout('three-port').right[0]?.wires &&
      form.kind === 'mark' &&
      form.among.some((terminal) => terminal.id === 'strip/6'),
  );
  if (found?.answer.kind !== 'mark') throw new Error('such a question is asked');
  const { marked } = found.answer;
  const left = found.judge({ kind: 'mark', marked: marked.filter((id) => id !== 'strip/6') });
  expect(left).toMatchObject({ right: false, notes: [{ about: 'strip/6' }] });
  expect(left.notes[0]?.cause).toContain('the three-port valve (open to the radiators only)');
  expect(left.notes[0]?.consequence).toContain('The boiler does not fire');
});
