import { runDay } from '../src/engine/faults/day/run.ts';
import { atMost, type Section, sayTime, whole } from './figure.ts';
import type { Material } from './material.ts';
import { type Effort, timeAll } from './stopwatch.ts';

/** The most that a day of the cylinder should take: twenty milliseconds. */
const MOST = 20e6;
const DAY_NS = 86_400e9;

/** How long a day of the cylinder's temperature takes. */
export function timeHeat({ system, reference: { id, wires } }: Material, effort: Effort): Section {
  const { day } = timeAll({ day: () => runDay(system, wires).hottest }, effort, { rounds: 9, roundMs: 40 });
  return {
    title: `The cylinder's temperature (${id})`,
    figures: [
      atMost('a day', day, MOST, sayTime),
      { what: 'a day lived against a day worked out', value: `${whole(DAY_NS / day)} ×` },
    ],
  };
}
