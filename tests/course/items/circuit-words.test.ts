import { describe, expect, test } from 'vitest';
import type { Item } from '../../../src/course/item.ts';
import { circuits } from '../../../src/course/items/circuits.ts';
import { deadTest } from '../../../src/course/items/dead-test.ts';
import { setSwitches } from '../../../src/course/items/set-switches.ts';
import { answersTo, itemsOf, shelf } from './support.ts';

/*
 * How questions about circuits are worded: short sentences, no slips, nothing that sends a learner to live work.
 */

/** Everything that a learner reads of an item. */
const textsOf = (item: Item): string[] => [
  item.ask,
  ...item.hints,
  ...item.steps,
  ...answersTo(item, 6).flatMap((answer) =>
    item.judge(answer).notes.flatMap(({ cause, consequence, look }) => [cause, consequence, look]),
  ),
];

const sentencesOf = (text: string): string[] => text.split(/(?<=[.?!])\s+(?=[A-Z“0-9−])/);
/** Settings and terminals one after the other are read as a list: its commas do what full stops do elsewhere. */
const isList = (sentence: string): boolean => (sentence.match(/, | and /g) ?? []).length > 3;
const wordsIn = (sentence: string): number => sentence.split(/\s+/).length;

describe.each(circuits.map((maker) => [maker.id, maker] as const))('%s', (_, maker) => {
  const items = shelf.layoutIds.flatMap((layout) => itemsOf(maker, { layouts: [layout] }, 6));

  test('no sentence has more than 30 words, lists of settings apart', () => {
    const long = items
      .flatMap(textsOf)
      .flatMap(sentencesOf)
      .filter((one) => !isList(one) && wordsIn(one) > 30);
    expect([...new Set(long)].slice(0, 5)).toEqual([]);
  });

  test('every sentence starts with a capital and ends, with no slips of the machine in it', () => {
    for (const item of items)
      for (const text of textsOf(item)) {
        expect(text, item.id).toMatch(/^[A-Z“0-9].*[.?!)]$/s);
        expect(text, item.id).not.toMatch(/ {2}| [.,:;?]|\(\)|\([^)]*\(|undefined|NaN|\[object|the the /);
      }
  });

  // A programmer whose heating cannot be on without hot water has but one contact for both: there, both count.
  const twoChannels = ({ scene }: Item): boolean =>
    shelf.layout(scene?.layout ?? '').system.parts.some(({ kind }) => kind.kind === 'two-channel-programmer');

  test('of a programmer with two channels only the one that matters is given as a reason', () => {
    for (const item of items.filter(twoChannels))
      for (const text of textsOf(item))
        expect(text, item.id).not.toMatch(/(because|L:|\() ?hot water is \w+ and heating is \w+/);
  });
});

test('a dead test begins isolated and proved dead, and nothing in it sends anyone to work live', () => {
  const items = shelf.layoutIds.flatMap((layout) => itemsOf(deadTest, { layouts: [layout] }, 6));
  for (const item of items) {
    expect(item.ask).toContain('It is isolated and proved dead');
    for (const text of textsOf(item))
      expect(text).not.toMatch(/with the supply on|switch (it |the supply )?on|\blive\b/i);
  }
});

test('what is asked to happen names no setting of a control', () => {
  for (const id of shelf.layoutIds) {
    const { system } = shelf.layout(id);
    for (const item of itemsOf(setSwitches, { layouts: [id] }, 12)) {
      const wanted = item.ask.split('Set the controls so that this happens:')[1]?.toLowerCase() ?? '';
      for (const { label, settings } of system.inputs)
        for (const setting of settings)
          expect(wanted, item.id).not.toContain(`${label.toLowerCase()} ${setting}`);
    }
  }
});
