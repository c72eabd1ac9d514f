import { within } from '../model/range.ts';
import { STORE_LITRES } from './standing-loss.ts';

/** Regulation (EU) 812/2013, Annex II: the watts below which a store earns the class are a + b × litres^0.4. */
const LINES = [
  ['A+', 5.5, 3.16],
  ['A', 8.5, 4.25],
  ['B', 12, 5.93],
  ['C', 16.66, 8.33],
  ['D', 21, 10.33],
  ['E', 26, 13.66],
  ['F', 31, 16.66],
] as const;

/** Letter on the label of a hot water store. `G` is all that lies on or above the line of F. */
export type LossClass = (typeof LINES)[number][0] | 'G';

/**
 * Upper line of a class, W, for a store of 15 to 2000 litres; Infinity for G.
 * @throws RangeError outside that range
 */
export function classLine(letter: LossClass, litres: number): number {
  const volume = within(STORE_LITRES, litres);
  const [, base, slope] = LINES.find(([name]) => name === letter) ?? ['G', Number.POSITIVE_INFINITY, 0];
  return base + slope * volume ** 0.4;
}

/** Class of a store of so many litres that loses so many watts standing. */
export function lossClass(watts: number, litres: number): LossClass {
  return LINES.find(([letter]) => watts < classLine(letter, litres))?.[0] ?? 'G';
}
