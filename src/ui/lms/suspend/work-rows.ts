import type { Coursework } from '../../../course/coursework/coursework.ts';
import { type Slot, variantSeed } from '../../../course/coursework/slots.ts';
import type { Work } from '../../../course/coursework/work.ts';
import type { Answer } from '../../../course/item.ts';
import { addressOf } from '../../../course/task.ts';
import type { Act } from '../../../engine/diagnose/act.ts';
import type { Wire } from '../../../engine/model/wiring.ts';

/*
  A piece of work as a short row of plain data, and back. A question's address is left out where it is the one that was
  dealt to this learner: then only how many seeds further on it is. A wiring is its ends in a row.
*/

/** What a row is read and written with. */
export interface Dealt {
  readonly coursework: Coursework;
  readonly slots: readonly Slot[];
  readonly code: string;
  /** Milliseconds since 1970: times count from there. */
  readonly begun: number;
}

export type Row = readonly unknown[];

/** Seeds that a maker may pass over before one gives a question. */
const MOST_TRIES = 50;

function addressAt(
  { coursework, slots, code }: Dealt,
  id: string,
  attempt: number,
  k: number,
): string | undefined {
  const slot = slots.find((one) => one.id === id);
  if (slot?.kind !== 'question') return undefined;
  return addressOf(slot.about, (variantSeed(coursework, code, slot, attempt) + k) >>> 0, slot.level);
}

/** How many seeds further on a question is than the one dealt; its address where it is another question. */
function placeOf(
  dealt: Dealt,
  { slot, attempt, item }: Extract<Work, { kind: 'question' }>,
): number | string {
  for (let k = 0; k < MOST_TRIES; k++) if (addressAt(dealt, slot, attempt, k) === item) return k;
  return item;
}

const answerRow = (answer: Answer): Row => {
  switch (answer.kind) {
    case 'choice':
      return ['c', answer.chosen];
    case 'mark':
      return ['m', answer.marked];
    case 'place':
      return ['p', answer.landed];
    case 'set':
      return ['s', answer.settings];
    case 'order':
      return ['o', answer.steps];
    case 'number':
      return ['n', answer.typed];
  }
};

export function rowOf(dealt: Dealt, work: Work): Row {
  const { slot, attempt, at, took, hints, right } = work;
  const head = [slot, attempt, at - dealt.begun, took, hints, Number(right)];
  switch (work.kind) {
    case 'question':
      return [...head, placeOf(dealt, work), ...answerRow(work.answer)];
    case 'job':
      return [...head, 'j', work.wires.flat().join(' ')];
    case 'visit':
      return [...head, 'v', work.callout, work.said, work.acts];
  }
}

const isObject = (data: unknown): data is Readonly<Record<string, unknown>> =>
  typeof data === 'object' && data !== null && !Array.isArray(data);
const areTexts = (data: unknown): data is string[] =>
  Array.isArray(data) && data.every((one) => typeof one === 'string');
const isTextMap = (data: unknown): data is Record<string, string> =>
  isObject(data) && areTexts(Object.values(data));

function answerFrom(kind: unknown, data: unknown): Answer | undefined {
  if (kind === 'c' && areTexts(data)) return { kind: 'choice', chosen: data };
  if (kind === 'm' && areTexts(data)) return { kind: 'mark', marked: data };
  if (kind === 'p' && isTextMap(data)) return { kind: 'place', landed: data };
  if (kind === 's' && isTextMap(data)) return { kind: 'set', settings: data };
  if (kind === 'o' && areTexts(data)) return { kind: 'order', steps: data };
  return kind === 'n' && typeof data === 'string' ? { kind: 'number', typed: data } : undefined;
}

/** A piece of work out of its row; undefined for anything else. Whoever plays its acts refuses what they cannot be. */
export function workFrom(dealt: Dealt, row: unknown): Work | undefined {
  if (!Array.isArray(row)) return undefined;
  const [slot, attempt, ago, took, hints, right, what, ...more] = row as unknown[];
  const numbers = [attempt, ago, took, hints];
  if (typeof slot !== 'string' || !numbers.every((one): one is number => Number.isFinite(one)))
    return undefined;
  const head = {
    slot,
    attempt: Number(attempt),
    at: dealt.begun + Number(ago),
    took: Number(took),
    hints: Number(hints),
    right: right === 1,
  };
  if (what === 'j' && typeof more[0] === 'string') {
    const ends = more[0] === '' ? [] : more[0].split(' ');
    if (ends.length % 2 !== 0) return undefined;
    const wires = Array.from(
      { length: ends.length / 2 },
      (_, k): Wire => [ends[2 * k] ?? '', ends[2 * k + 1] ?? ''],
    );
    return { ...head, kind: 'job', wires };
  }
  const [first, second, acts] = more;
  if (what === 'v') {
    const isVisit = typeof first === 'string' && typeof second === 'string' && Array.isArray(acts);
    if (!isVisit || !acts.every((act) => isObject(act) && typeof act.do === 'string')) return undefined;
    return { ...head, kind: 'visit', callout: first, said: second, acts: acts as Act[] };
  }
  const item = typeof what === 'number' ? addressAt(dealt, slot, head.attempt, what) : what;
  const answer = answerFrom(first, second);
  return typeof item === 'string' && answer ? { ...head, kind: 'question', item, answer } : undefined;
}
