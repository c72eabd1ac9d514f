import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';

export const SCALD_CELSIUS: Range = { name: 'Water on the skin', unit: '°C', low: 45, high: 69 };

/** Seconds to a scald of an adult's skin: from the first blisters to burns of the full thickness. */
export interface ScaldBand {
  readonly quickest: number;
  readonly slowest: number;
  /** The band in words, no finer than the sources agree. */
  readonly says: string;
}

const SOURCE =
  'Exposure-time table descended from the burn study of 1947, with a published fit for severe scalds beside it. ' +
  'They differ by a factor of about two at 60 to 65 °C. Children scald sooner.';

/** °C, then seconds to a second-degree burn and to one of full thickness. At 65 the first is from memory. */
const TABLE = [
  [45, 7200, 10_800],
  [47, 1200, 2700],
  [48, 900, 1200],
  [49, 480, 600],
  [51, 120, 252],
  [55, 17, 30],
  [60, 3, 5],
  [65, 1, 2],
  [69, 1, 1],
] as const;

/** Full-thickness fit, seconds, for 58.3 to 71 °C (medicalalgorithms.com). */
const severe = (celsius: number): number => 0.05322 * celsius ** 2 - 7.437 * celsius + 262.4;

/** Between two rows a time falls by equal shares for equal steps. */
function between(celsius: number, column: 1 | 2): number {
  const above = Math.max(
    1,
    TABLE.findIndex((row) => row[0] >= celsius),
  );
  const [low, high] = [TABLE[above - 1]!, TABLE[above]!];
  const share = (celsius - low[0]) / (high[0] - low[0]);
  return low[column] * (high[column] / low[column]) ** share;
}

function words(quickest: number, slowest: number): string {
  if (slowest < 3) return 'a second or two';
  if (slowest <= 10) return 'a few seconds';
  const [unit, size] = slowest < 90 ? ['seconds', 1] : slowest < 5400 ? ['minutes', 60] : ['hours', 3600];
  const near = (seconds: number) => Math.max(1, Math.round(seconds / Number(size)));
  const [from, to] = [near(quickest), near(slowest)];
  return from === to ? `about ${from} ${unit}` : `about ${from} to ${to} ${unit}`;
}

/**
 * How long hot water takes to scald an adult, as a band. For teaching, not for design.
 * @param celsius 45 to 69 °C
 * @throws RangeError outside that range
 */
export function scaldTime(celsius: number): Worked<ScaldBand> {
  const quickest = between(within(SCALD_CELSIUS, celsius), 1);
  const table = between(celsius, 2);
  const slowest = celsius >= 58.3 ? Math.max(table, severe(celsius)) : table;
  const says = words(quickest, slowest);
  return {
    value: { quickest, slowest, says },
    source: SOURCE,
    lines: [
      {
        what: 'Time to a scald',
        rule: 'read from the table, between its rows',
        put: `${celsius} °C`,
        result: says,
        lookedUp: true,
      },
    ],
  };
}
