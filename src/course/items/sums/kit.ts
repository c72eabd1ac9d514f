import { figure } from '../../../engine/model/figure.ts';
import type { Worked, WorkLine } from '../../../engine/model/worked.ts';
import type { Hints } from '../../item.ts';
import type { Random } from '../../random.ts';
import type { Level } from '../../task.ts';
import type { NumberTask } from '../number.ts';

/** One case of a sum, with its numbers. */
export interface SumCase extends NumberTask {
  readonly ask: string;
  readonly hints: Hints;
  readonly steps: readonly string[];
}

/** A kind of sum. The same random series gives the same case. */
export interface Sum {
  readonly id: string;
  readonly title: string;
  readonly make: (random: Random, level: Level) => SumCase;
}

/** A figure with its unit, such as `10.7 L`. */
export const sayer =
  (unit: string, places: number) =>
  (value: number): string =>
    `${figure(value, places)} ${unit}`;

/** A line of the working as a sentence. */
export const sayLine = ({ what, rule, put, result, lookedUp, passes }: WorkLine): string =>
  lookedUp || passes !== undefined
    ? `${what}: ${rule}. ${put}: ${result}.`
    : `${what} = ${rule} = ${put} = ${result}.`;

export const sayLines = ({ lines }: Pick<Worked<unknown>, 'lines'>): string[] => lines.map(sayLine);

/** How a figure compares with the right one: “You have 12 L. The working gives 10.7 L: yours is 12 % too much.” */
export function compare(given: number, value: number, say: (value: number) => string): string {
  const ratio = given / value;
  const power = Math.round(Math.log10(Math.abs(ratio)));
  const times = 10 ** Math.abs(power);
  const near = Math.abs(ratio / 10 ** power - 1) < 0.05;
  const how =
    given === 0
      ? 'yours says there is nothing'
      : given < 0
        ? 'yours has the wrong sign'
        : power !== 0 && near
          ? `yours is ${times} times too ${power > 0 ? 'much: a unit or the point has slipped' : 'little: a unit or the point has slipped'}`
          : ratio >= 2
            ? `yours is ${figure(ratio, 1)} times as much`
            : ratio > 1
              ? `yours is ${figure(Math.max(1, (ratio - 1) * 100), 0)} % too much`
              : `yours is ${figure(Math.max(1, (1 - ratio) * 100), 0)} % too little`;
  return `You have ${say(given)}. The working gives ${say(value)}: ${how}.`;
}

/** A number from low to high in steps, by chance. */
export const between = (random: Random, low: number, high: number, step: number): number => {
  const count = Math.round((high - low) / step);
  return Math.round((low + step * random.int(count + 1)) * 1000) / 1000;
};
