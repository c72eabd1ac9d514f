import { expect, test } from 'vitest';
import { meterReading } from '../../../src/course/items/meter-reading.ts';
import { evaluate } from '../../../src/engine/circuit/plain.ts';
import { shownOn } from './circuit-support.ts';
import { shelf } from './support.ts';

const shown = shownOn(meterReading, shelf.layoutIds, 18);
const judged = ({ item }: (typeof shown)[number], typed: string) => item.judge({ kind: 'number', typed });

// What is joined to what is the second opinion here: the maker asks the meter for the volts.
test('230 V is asked only between line and neutral, 0 V only where both are alike', () => {
  const asked = { '230 V': 0, '0 V': 0 };
  for (const { item, system, wires, config } of shown) {
    const { line, neutral } = evaluate(system, wires, config);
    const [a = -1, b = -1] = (item.scene?.lit ?? []).map((id) => system.nodeOf.get(id) ?? -1);
    const typed = item.answer.kind === 'number' ? item.answer.typed : '';
    if (typed === '230 V') expect((line[a] && neutral[b]) || (neutral[a] && line[b]), item.id).toBe(true);
    else expect(line[a], item.id).toBe(line[b]);
    asked[typed === '230 V' ? '230 V' : '0 V']++;
  }
  // Neither answer may be a safe guess.
  expect(asked['230 V']).toBeGreaterThan(shown.length / 4);
  expect(asked['0 V']).toBeGreaterThan(shown.length / 4);
});

// ESQCR 2002, regulation 27: 230 V, +10 % and −6 %.
test('any voltage that a supply may have is taken for 230 V', () => {
  const one = shown.find(({ item }) => item.answer.kind === 'number' && item.answer.typed === '230 V');
  if (!one) throw new Error('230 V is asked');
  for (const typed of ['230 V', '230V', '230 volts', '230 V a.c.', '240 V', '216.2 V', '253 V'])
    expect(judged(one, typed).right, typed).toBe(true);
  for (const typed of ['0 V', '115 V', '400 V', '-230 V', '230', '230 mV', '230 A', 'live', ''])
    expect(judged(one, typed).right, typed).toBe(false);
});

test('a wrong reading is told of both terminals, and of the volts that were given', () => {
  for (const one of shown.slice(0, 120)) {
    const [first = '', second = ''] = one.item.steps;
    const { right, notes } = judged(one, '115 V');
    expect(right).toBe(false);
    expect(notes[0]?.cause).toContain(first);
    expect(notes[0]?.cause).toContain(second);
    expect(notes[0]?.cause).toContain('not 115 V');
    expect(notes[0]?.scene?.lit).toHaveLength(2);
  }
});

test('what is told of 0 V is not said of half the volts', () => {
  const live = shown.filter(({ item }) => item.answer.kind === 'number' && item.answer.typed === '230 V');
  for (const one of live.slice(0, 20)) {
    expect(judged(one, '0 V').notes[0]?.look).toContain('one and the same core');
    expect(judged(one, '115 V').notes[0]?.look).toContain('a load in the way');
  }
});
