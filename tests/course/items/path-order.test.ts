import { expect, test } from 'vitest';
import { pathOrder } from '../../../src/course/items/path-order.ts';
import { measure } from '../../../src/engine/meter/measure.ts';
import { meterOn, type Shown, shownOn, voltsAt } from './circuit-support.ts';
import { shelf } from './support.ts';

const shown = shownOn(pathOrder, shelf.layoutIds, 9);
const wayOf = ({ item: { answer } }: Shown): readonly string[] =>
  answer.kind === 'order' ? answer.steps : [];

/** Which terminals of the way read 230 V with the wires off one of them; the valves are held where they stand. */
function cutAt(one: Shown, terminal: string): boolean[] {
  const wires = one.wires.filter((wire) => !wire.includes(terminal));
  const cut = { ...one, wires };
  const meter = measure(one.system, wires, one.config);
  return wayOf(one).map((id) => voltsAt(cut, meter, id) > 229);
}

// The meter is the second opinion: it knows nothing of routes. What lies nearer the supply stays live when a terminal
// further on is taken off; what lies beyond goes dead, for in a right wiring one call has one feed.
test('with the wires off a terminal, all before it in the order stays live and all after it goes dead', () => {
  expect(shown.length).toBeGreaterThan(150);
  for (const one of shown) {
    const way = wayOf(one);
    const meter = meterOn(one);
    for (const id of way) expect(voltsAt(one, meter, id), `${one.item.id} ${id}`).toBeCloseTo(230, 0);
    way.forEach((id, k) => {
      const left = cutAt(one, id).toSpliced(k, 1);
      expect(left, `${one.item.id} ${id}`).toEqual(left.map((_, at) => at < k));
    });
  }
});

test('the list is not dealt in the right order, and only the right order is taken', () => {
  for (const { item } of shown) {
    const { form, answer } = item;
    if (form.kind !== 'order' || answer.kind !== 'order') throw new Error('an order is asked for');
    const dealt = form.steps.map(({ id }) => id);
    expect(dealt.toSorted()).toEqual(answer.steps.toSorted());
    expect(item.judge({ kind: 'order', steps: dealt }).right).toBe(false);
    expect(item.judge(answer)).toEqual({ right: true, notes: [] });
  }
});

test('two terminals the wrong way round are told which feeds which, and one left out is named', () => {
  for (const { item, layout } of shown.slice(0, 60)) {
    const { answer } = item;
    if (answer.kind !== 'order') continue;
    const [first = '', second = '', ...rest] = answer.steps;
    const swapped = item.judge({ kind: 'order', steps: [second, first, ...rest] });
    expect(swapped.notes).toHaveLength(1);
    expect(swapped.notes[0]).toMatchObject({
      about: second,
      scene: { layout: layout.id, lit: [second, first] },
    });
    const short = item.judge({ kind: 'order', steps: answer.steps.slice(1) });
    expect(short.notes.map(({ about }) => about)).toEqual([first]);
  }
});
