import { expect, test } from 'vitest';
import { whereStops } from '../../../src/course/items/where-stops.ts';
import { sayNode } from '../../../src/engine/rules/words.ts';
import { meterOn, shownOn, voltsAt } from './circuit-support.ts';
import { shelf } from './support.ts';

const shown = shownOn(whereStops, shelf.layoutIds, 18);

// The meter is the second opinion: it solves for volts and knows nothing of routes.
test('a tester going along the list reads 230 V up to the answer, and nothing after it', () => {
  expect(shown.length).toBeGreaterThan(200);
  for (const one of shown) {
    const { form, answer, id } = one.item;
    if (form.kind !== 'mark' || answer.kind !== 'mark') throw new Error('a mark is asked for');
    const meter = meterOn(one);
    const read = form.among.map((terminal) => voltsAt(one, meter, terminal.id) > 5);
    const stop = form.among.findIndex((terminal) => terminal.id === answer.marked[0]);
    expect(read, id).toEqual(form.among.map((_, k) => k <= stop));
    // There is something on both sides: a list that is all live, or all dead, gives the answer away.
    expect(stop, id).toBeGreaterThanOrEqual(0);
    expect(stop, id).toBeLessThan(form.among.length - 1);
  }
});

test('on the hardest level a wire is missing, and with it back the part works', () => {
  const gone = shown.filter(({ item }) => item.id.endsWith('/3'));
  expect(gone.length).toBeGreaterThan(50);
  for (const { item, layout, wires } of gone)
    expect(
      layout.right.some((right) => right.wires.length === wires.length + 1),
      item.id,
    ).toBe(true);
});

test('every wrong mark is told of the next terminal to test, on the right side of it', () => {
  for (const { item, system } of shown.slice(0, 80)) {
    const { form, answer } = item;
    if (form.kind !== 'mark' || answer.kind !== 'mark') continue;
    const stop = form.among.findIndex(({ id }) => id === answer.marked[0]);
    form.among.forEach(({ id }, k) => {
      const { right, notes } = item.judge({ kind: 'mark', marked: [id] });
      expect(right).toBe(k === stop);
      if (right) return;
      expect(notes[0]?.cause).toContain(k < stop ? 'is live' : 'is dead');
      const neighbour = form.among[k < stop ? k + 1 : k - 1];
      if (neighbour) expect(notes[0]?.look).toContain(sayNode(system, system.nodeOf.get(neighbour.id) ?? -1));
    });
  }
});

test('two marks are one too many, even with the right one among them', () => {
  const { item } = shown[0] ?? {};
  const ids = item?.form.kind === 'mark' ? item.form.among.map(({ id }) => id) : [];
  const { right, notes } = item?.judge({ kind: 'mark', marked: ids }) ?? { right: true, notes: [] };
  expect(right).toBe(false);
  expect(notes[0]?.cause).toContain('The live stops in one place');
});

test('the last hint tells of one test, and never of the terminals on either side of the break', () => {
  for (const { item } of shown) {
    const { form, answer, hints, id } = item;
    if (form.kind !== 'mark' || answer.kind !== 'mark') continue;
    const stop = form.among.findIndex((terminal) => terminal.id === answer.marked[0]);
    const told = form.among.findIndex(({ says }) => new RegExp(`^${says} is (live|dead)`).test(hints[2]));
    expect(told, id).toBeGreaterThanOrEqual(0);
    expect([stop, stop + 1], id).not.toContain(told);
    expect(hints[2], id).toMatch(told < stop ? /So look further on\.$/ : /So look nearer to the supply\.$/);
  }
});
