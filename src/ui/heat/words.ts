import type { DayEvent } from '../../engine/faults/day/events.ts';
import type { DayRun } from '../../engine/faults/day/record.ts';

/** A run and whose it is: "Your wiring". */
export interface NamedRun {
  readonly name: string;
  readonly run: DayRun;
}

/** The time of day: "08:47". */
export function clock(seconds: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(seconds / 3600) % 24)}:${two(Math.floor(seconds / 60) % 60)}`;
}

/** What happens apart from the clock and the taps, in order. */
export const storyOf = ({ events }: DayRun): DayEvent[] =>
  events.filter(({ kind }) => kind !== 'programmer' && kind !== 'draw');

/** The sign of an event in the chart and its list: numbers for the first run, letters for the second. */
export const signOf = (run: number, k: number): string =>
  run === 0 || k > 25 ? `${k + 1}` : 'abcdefghijklmnopqrstuvwxyz'.charAt(k);

const times = (count: number): string => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);

/** A store this far over its thermostat, K, is hotter than a healthy one gets after the burner stops. Assumption. */
const OVERSHOOT = 12;

/** How a run went, in two or three short sentences. */
export function summary({ name, run }: NamedRun): string {
  const coldest = Math.min(...run.samples.map(({ store }) => store));
  const first = (kind: DayEvent['kind']) => run.events.find((event) => event.kind === kind);
  const said = [`${name}: the store is between ${Math.round(coldest)} and ${Math.round(run.hottest)} °C.`];
  const fuse = first('fuse');
  const cutOut = first('cut-out');
  const uncontrolled = first('uncontrolled');
  const limit = first('boiler');
  const lifts = run.events.filter(({ kind, says }) => kind === 'relief' && says.includes('lifts'));
  if (fuse) said.push(`The fuse blows at ${clock(fuse.seconds)}.`);
  if (cutOut) said.push(`The store reaches the cut-out’s trip point at ${clock(cutOut.seconds)}.`);
  if (cutOut) said.push(uncontrolled ? 'The heat does not stop.' : 'The heat stops.');
  if (limit) said.push(`The boiler’s own limit stops it at ${clock(limit.seconds)}.`);
  if (lifts[0]) {
    const litres = Math.max(1, Math.round(run.relieved));
    said.push(
      `The relief valve lifts ${times(lifts.length)} and lets out ${litres} ${litres === 1 ? 'litre' : 'litres'}.`,
    );
  }
  if (!fuse && !cutOut && !limit) {
    const over = Math.round(run.hottest - run.settings.thermostat);
    said.push(
      over > OVERSHOOT
        ? `That is ${over} K over its thermostat, and the cut-out never trips: nobody is told.`
        : 'The cut-out has nothing to do.',
    );
  }
  return said.join(' ');
}
