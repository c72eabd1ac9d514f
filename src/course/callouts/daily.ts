import { DAY } from '../progress/answers.ts';
import { timeOfDay } from '../progress/day.ts';
import { makeRandom, seedOf } from '../random.ts';
import type { Level } from '../task.ts';
import type { CalloutAddress } from './address.ts';

type Made = Extract<CalloutAddress, { kind: 'made' }>;

/**
 * The callout of a day, the same for everybody: every system comes once before any comes again, in an order that changes
 * from round to round, and never on two days running (where there are two systems at least).
 * @param day as `2027-03-31`
 * @param systems ids; their order does not matter
 * @throws RangeError for anything that is not a day, or without systems
 */
export function dailyCallout(day: string, systems: readonly string[]): Made {
  const time = timeOfDay(day);
  if (time === undefined) throw new RangeError(`expected a day such as 2027-03-31, found "${day}"`);
  const all = [...systems].sort();
  const round = Math.floor(time / DAY / Math.max(1, all.length));
  const order = orderOf(all, round);
  const system = order[(time / DAY) % Math.max(1, all.length)];
  if (system === undefined) throw new RangeError('expected a system, found none');
  const { int } = makeRandom(seedOf(`callout of ${day}`));
  return { kind: 'made', system, seed: int(2 ** 32), level: (1 + int(3)) as Level };
}

/** The order of one round. With two systems they take turns; with more, a round never opens with what ended the one before. */
function orderOf(all: readonly string[], round: number): readonly string[] {
  if (all.length < 3) return all;
  const order = dealt(all, round);
  const [first, second] = order;
  if (first === dealt(all, round - 1).at(-1)) {
    order[0] = second as string;
    order[1] = first as string;
  }
  return order;
}

const dealt = (all: readonly string[], round: number): string[] =>
  makeRandom(seedOf(`round ${round}`)).shuffle(all);
