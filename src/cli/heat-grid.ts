import type { DayRun } from '../engine/faults/day/record.ts';
import { positionOf, type System } from '../engine/model/system.ts';
import type { Grid } from './layout.ts';

/** A run as a table: a row a minute, with what has happened since the row before. */
export function heatGrid(system: System, { samples, events }: DayRun): Grid {
  const valves = system.movers.flatMap(({ part }) => system.parts[part] ?? []);
  let next = 0;
  return {
    headings: ['time s', 'store °C', 'flow °C', 'boiler', 'pump', ...valves.map(({ id }) => id), 'events'],
    rows: samples.map(({ seconds, store, flow, boiler, pump, place }) => {
      const since = next;
      while (next < events.length && (events[next]?.seconds ?? 0) <= seconds) next++;
      return [
        String(seconds),
        store.toFixed(2),
        flow.toFixed(2),
        boiler ? 'alight' : 'off',
        pump ? 'runs' : 'off',
        ...valves.map((part) => positionOf(system, part, place)),
        events
          .slice(since, next)
          .map(({ says }) => says)
          .join(' '),
      ];
    }),
  };
}
