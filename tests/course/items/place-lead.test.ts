import { expect, test } from 'vitest';
import { placeLead } from '../../../src/course/items/place-lead.ts';
import { judgeFor } from '../../../src/engine/grade/judge-for.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { answersTo, itemsOf, shelf } from './support.ts';

const layouts = ['three-port', 'two-two-ports-unvented'];

test('level says how many leads have come off', () => {
  for (const level of [1, 2, 3] as const) {
    for (const { form } of itemsOf(placeLead, { layouts }, 10, level))
      expect(form.kind === 'place' && form.leads).toHaveLength(level);
  }
});

test('a landing is right exactly when the judge of wirings accepts the whole wiring', () => {
  let wrong = 0;
  let otherWay = 0;
  for (const item of itemsOf(placeLead, { layouts }, 30)) {
    const { scene } = item;
    if (!scene) throw new Error('the wiring that is left is shown');
    const judging = judgeFor(shelf.layout(scene.layout).system);
    for (const answer of answersTo(item, 25)) {
      if (answer.kind !== 'place') continue;
      const wires: Wire[] = [...scene.wires, ...Object.entries(answer.landed)];
      const { right } = item.judge(answer);
      expect(right).toBe(judging.judge(wires).accepted);
      if (!right) wrong++;
      else if (JSON.stringify(answer) !== JSON.stringify(item.answer)) otherWay++;
    }
  }
  expect(wrong).toBeGreaterThan(300);
  // Two joined terminals, or a spare one for a pair that only meets itself: more than one landing is right.
  expect(otherWay).toBeGreaterThan(0);
});

test('a lead that hangs free is wrong, and so is one landed nowhere on the strip', () => {
  const [item] = itemsOf(placeLead, { layouts }, 5, 1);
  const lead = item?.form.kind === 'place' ? (item.form.leads[0]?.id ?? '') : '';
  expect(item?.judge({ kind: 'place', landed: {} }).notes[0]?.about).toBe(lead);
  expect(item?.judge({ kind: 'place', landed: { [lead]: 'boiler/L' } }).right).toBe(false);
});

test('grey of the three-port on neutral: the note tells of the hunting valve, at the lead', () => {
  const grey = itemsOf(placeLead, { layouts: ['three-port'] }, 200, 1).find(
    ({ form, scene }) =>
      form.kind === 'place' &&
      form.leads[0]?.id === 'three-port/grey' &&
      // Terminal 9 is the neutral of this right wiring.
      scene?.wires.some(([a, b]) => a === 'spur/N' && b === 'strip/9'),
  );
  const notes = grey?.judge({ kind: 'place', landed: { 'three-port/grey': 'strip/9' } }).notes;
  expect(notes?.[0]).toMatchObject({ about: 'three-port/grey', scene: { layout: 'three-port' } });
  expect(notes?.[0]?.cause).toContain('You landed three-port valve grey on terminal 9');
  expect(notes?.map(({ consequence }) => consequence).join(' ')).toMatch(/never come to rest|hunt|rest/);
});
