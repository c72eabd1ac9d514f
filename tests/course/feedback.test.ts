import { describe, expect, test } from 'vitest';
import type { Answer, Item, Judgement } from '../../src/course/item.ts';
import { findMaker, makers } from '../../src/course/items/index.ts';
import { sums } from '../../src/course/items/sums/index.ts';
import type { Maker, Task } from '../../src/course/task.ts';
import { configurations } from '../../src/engine/grade/size.ts';
import { loadQuizzes } from '../../src/files/site/quizzes.ts';
import { answersTo, itemsOf, shelf, textOf } from './items/support.ts';

/*
 * The law of feedback: every wrong answer that a learner can give is told why, what comes of it and where to look, in
 * words about that very answer. All answers to small forms are given here, and a sample of those to large ones.
 */

const MOST_CONFIGURATIONS = 2400;
const LEAST_LETTERS = 12;
const SEEDS = 9;
const MOST_ANSWERS = 30;

const small = shelf.layoutIds.filter((id) => configurations(shelf.layout(id).system) <= MOST_CONFIGURATIONS);

/** What a maker is tried on: each small layout, all of them together, each quiz, each sum. */
function tasksFor({ id, needs }: Maker): Omit<Task, 'make'>[] {
  if (needs === 'layout') return small.map((layout) => ({ layouts: [layout] }));
  if (needs === 'layouts')
    return small.map((_, at) => ({ layouts: [0, 1, 2, 3].map((k) => small[(at + k) % small.length] ?? '') }));
  if (needs === 'sum') return sums.map(({ id: sum }) => ({ sum }));
  return loadQuizzes()
    .filter(({ procedure }) => (procedure !== undefined) === (id === 'order'))
    .map((quiz) => ({ quiz: quiz.id }));
}

/** Answers of every kind that no form offers. */
const STRANGE: readonly Answer[] = [
  { kind: 'choice', chosen: ['no-such'] },
  { kind: 'mark', marked: ['no-such/terminal'] },
  { kind: 'place', landed: { 'no-such/lead': 'no-such/way' } },
  { kind: 'set', settings: { 'no-such': 'on' } },
  { kind: 'order', steps: ['no-such'] },
  { kind: 'number', typed: '' },
];

const BROKEN = /undefined|NaN|Infinity|\[object|null|\bTODO\b| {2}|\.\.(?!\.)/;

/**
 * What is wrong in an answer, without what is right in it: two answers with the same fault may be told the same. Of
 * an order it is the pairs, of landed leads those that are told of and where they are, of figures their notes.
 */
function faultOf(answer: Answer, { notes }: Judgement): string {
  if (answer.kind === 'order' || answer.kind === 'number')
    return notes.map(({ about, cause }) => `${about} ${cause}`).join();
  if (answer.kind === 'place')
    return notes.map(({ about, cause }) => `${about} ${about === '' ? cause : answer.landed[about]}`).join();
  return JSON.stringify(answer);
}

function complaints(item: Item): string[] {
  const said: string[] = [];
  const complain = (what: string) => said.push(`${item.id}: ${what}`);
  if (!item.judge(item.answer).right) complain('its own answer is judged wrong');
  const texts = [item.ask, ...item.hints, ...item.steps];
  for (const text of texts) if (BROKEN.test(text) || text.trim() === '') complain(`broken text: “${text}”`);
  if (new Set(item.hints).size < 3) complain('two hints are the same');
  const faults = new Map<string, string>();
  const causes = new Map<string, string>();
  for (const answer of answersTo(item, MOST_ANSWERS)) {
    const judgement = item.judge(answer);
    const { right, notes } = judgement;
    const given = JSON.stringify(answer);
    if (right !== (notes.length === 0))
      complain(`${given}: ${right ? 'right, yet told off' : 'wrong, and nothing said'}`);
    if (right) continue;
    for (const note of notes) {
      for (const part of [note.cause, note.consequence, note.look])
        if (part.length < LEAST_LETTERS || BROKEN.test(part)) complain(`${given}: says “${part}”`);
      // A cause that fits two options, terminals or leads is a stock sentence.
      const other = causes.get(note.cause);
      if (other !== undefined && other !== note.about)
        complain(`${note.about} and ${other}: “${note.cause}”`);
      causes.set(note.cause, note.about);
    }
    const whole = notes.map(textOf).join(' ');
    const fault = faultOf(answer, judgement);
    const twin = faults.get(whole);
    if (twin !== undefined && twin !== fault) complain(`${fault} and ${twin}: “${whole}”`);
    faults.set(whole, fault);
  }
  return said;
}

describe.each(makers.map((maker) => [maker.id, maker] as const))('%s', (_, maker) => {
  const tasks = tasksFor(maker);
  const items = tasks.flatMap((task) => itemsOf(maker, task, SEEDS));

  test('gives questions', () => {
    expect(items.length).toBeGreaterThan(5);
  });

  test('tells every wrong answer why, what comes of it and where to look, in its own words', () => {
    expect(items.flatMap(complaints).slice(0, 10)).toEqual([]);
  });

  test('takes ids that its form does not offer for wrong, and stumbles over none', () => {
    for (const item of items.slice(0, 12))
      for (const answer of STRANGE) expect(item.judge(answer).right, `${item.id} ${answer.kind}`).toBe(false);
  });

  test('gives hints that leave something to do, and steps that end with the answer', () => {
    for (const item of items) {
      expect(item.steps.length, item.id).toBeGreaterThan(0);
      const { answer, form, hints } = item;
      if (form.kind === 'choice' && answer.kind === 'choice' && !form.many) {
        const right = form.options.find(({ id }) => answer.chosen.includes(id))?.says ?? '';
        expect(
          hints[2].toLowerCase() === right.toLowerCase() || hints[2].includes(`“${right}”`),
          item.id,
        ).toBe(false);
      }
      if (form.kind === 'place' && answer.kind === 'place') {
        // Where one lead goes may be told, but never where all of them go.
        const hint = hints[2].toLowerCase();
        const told = form.leads.filter(({ id, says }) => {
          const way = answer.landed[id]?.split('/')[1] ?? '';
          return (
            (form.leads.length === 1 || hint.includes(says.toLowerCase())) &&
            new RegExp(`terminal ${way}\\b`).test(hint)
          );
        });
        expect(told.length, item.id).toBeLessThan(form.leads.length);
      }
      if (form.kind === 'order') {
        const told = form.steps.filter(({ says }) => hints[2].includes(says));
        expect(told.length, item.id).toBeLessThan(form.steps.length);
      }
    }
  });
});

test('there is no maker of this name', () => {
  expect(findMaker('no-such')).toBeUndefined();
});
