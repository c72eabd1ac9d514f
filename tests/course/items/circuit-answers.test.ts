import { describe, expect, test } from 'vitest';
import type { Answer, Item } from '../../../src/course/item.ts';
import { circuits } from '../../../src/course/items/circuits.ts';
import { deadTest } from '../../../src/course/items/dead-test.ts';
import { liveTerminals } from '../../../src/course/items/live-terminals.ts';
import { whereStops } from '../../../src/course/items/where-stops.ts';
import { stepsFrom } from '../circuit/support.ts';
import { type Shown, shownOn } from './circuit-support.ts';
import { itemsOf, shelf } from './support.ts';

/*
 * Answers about what is joined to what, against a search of the test's own over wires and closed contacts; and single
 * changes of a right answer, each of which must be judged wrong.
 */

/** Whether a node is joined to the line of any supply, by the test's own search. */
function liveIn({ system, wires, config }: Shown): (terminal: string) => boolean {
  const joined = system.supplies.map(({ line }) => stepsFrom(system, wires, config, line));
  return (terminal) => joined.some((steps) => steps.has(system.nodes.indexOf(terminal)));
}

const markedIn = ({ answer }: Item): readonly string[] => (answer.kind === 'mark' ? answer.marked : []);
const amongIn = ({ form }: Item): string[] => (form.kind === 'mark' ? form.among.map(({ id }) => id) : []);

test('the live terminals are those that a search from the line of a supply reaches', () => {
  for (const shown of shownOn(liveTerminals, shelf.layoutIds, 12)) {
    const isLive = liveIn(shown);
    expect(amongIn(shown.item).filter(isLive), shown.item.id).toEqual(markedIn(shown.item));
  }
});

test('the live stops at the last terminal of the list that such a search reaches', () => {
  for (const shown of shownOn(whereStops, shelf.layoutIds, 12)) {
    const isLive = liveIn(shown);
    expect([amongIn(shown.item).findLast(isLive)], shown.item.id).toEqual(markedIn(shown.item));
  }
});

test('with the supply off, the joined terminals are those that a search from the first lead reaches', () => {
  for (const { item, system, wires, config } of shownOn(deadTest, shelf.layoutIds, 12)) {
    const steps = stepsFrom(system, wires, config, system.nodes.indexOf(item.scene?.lit?.[0] ?? ''));
    expect(
      amongIn(item).filter((id) => steps.has(system.nodes.indexOf(id))),
      item.id,
    ).toEqual(markedIn(item));
  }
});

const toggled = (list: readonly string[], id: string): string[] =>
  list.includes(id) ? list.filter((one) => one !== id) : [...list, id];

/** The right answer with one thing in it changed; of settings there may be several that are right, so none is made. */
function oneOff({ form, answer }: Item): Answer[] {
  if (form.kind === 'mark' && answer.kind === 'mark')
    return form.among.map(({ id }) => ({ kind: 'mark', marked: toggled(answer.marked, id) }));
  if (form.kind === 'choice' && answer.kind === 'choice')
    return form.options.map(({ id }) => ({ kind: 'choice', chosen: toggled(answer.chosen, id) }));
  if (answer.kind === 'order')
    return answer.steps.slice(1).map((_, k) => {
      const steps = [...answer.steps];
      steps.splice(k, 2, answer.steps[k + 1] ?? '', answer.steps[k] ?? '');
      return { kind: 'order', steps };
    });
  return [];
}

/** The right answer with something in it that was not offered. */
function withStranger({ answer }: Item): Answer | undefined {
  if (answer.kind === 'mark') return { kind: 'mark', marked: [...answer.marked, 'no-such/terminal'] };
  if (answer.kind === 'choice') return { kind: 'choice', chosen: [...answer.chosen, 'no-such'] };
  if (answer.kind === 'order') return { kind: 'order', steps: [...answer.steps, 'no-such/terminal'] };
  if (answer.kind === 'set') return { kind: 'set', settings: { ...answer.settings, 'no-such': 'on' } };
  return undefined;
}

describe.each(circuits.map((maker) => [maker.id, maker] as const))('%s', (_, maker) => {
  const items = shelf.layoutIds.flatMap((layout) => itemsOf(maker, { layouts: [layout] }, 9));

  test('the right answer is right, and with any one thing in it changed it is wrong', () => {
    for (const item of items) {
      expect(item.judge(item.answer), item.id).toEqual({ right: true, notes: [] });
      for (const answer of oneOff(item)) {
        const { right, notes } = item.judge(answer);
        expect(right, `${item.id} ${JSON.stringify(answer)}`).toBe(false);
        expect(notes.length, item.id).toBeGreaterThan(0);
      }
    }
  });

  test('something that was not offered makes a right answer wrong, and is named', () => {
    for (const item of items) {
      const answer = withStranger(item);
      if (!answer) continue;
      const { right, notes } = item.judge(answer);
      expect(right, item.id).toBe(false);
      expect(JSON.stringify(notes), item.id).toContain('no-such');
    }
  });

  test('no hint tells the whole answer', () => {
    for (const item of items) {
      const hints = item.hints.join(' ');
      const last = item.steps.at(-1) ?? '';
      expect(hints.includes(last), item.id).toBe(false);
      if (item.form.kind === 'mark' && !item.form.one) {
        // At most one terminal is told of in full.
        const told = amongIn(item).filter((_, k) => item.hints[2] === item.steps[k]);
        expect(told.length, item.id).toBeLessThanOrEqual(1);
      }
    }
  });
});
