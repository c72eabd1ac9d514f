import type { Observation, Test } from '../../engine/diagnose/evidence.ts';
import type { Allowed } from '../../engine/diagnose/expert.ts';
import type { Settings, System } from '../../engine/model/system.ts';
import { isOnWith } from './controls.ts';

/** Whether the wiring has worked as it is now, or may have been wired wrong. */
export type History = 'worked' | 'altered';

/** What was found while the controls stood in one way. Everything in it holds at the same time. */
export interface Moment {
  /** A setting for every input of the system. */
  readonly settings: Settings;
  readonly finds: readonly Observation[];
}

/** A visit as somebody has entered it so far. */
export interface Note {
  /** Id of the right wiring that the drawing on site is like. */
  readonly wiring: string;
  readonly who: Allowed;
  readonly history: History;
  /** At least one. */
  readonly moments: readonly Moment[];
}

/** Every input of a system with its setting: at rest where not told, but with the supply of the controls on. */
export function settingsFrom({ inputs, supply }: System, settings: Settings): Settings {
  return Object.fromEntries(
    inputs.map(({ id, settings: [rest, active] }, k) => [
      id,
      settings[id] ?? (k === supply.input ? active : rest),
    ]),
  );
}

/** A moment with nothing found yet: the supply on, nothing called. */
export const freshMoment = (system: System): Moment => ({ settings: settingsFrom(system, {}), finds: [] });

/** A visit with nothing entered yet. */
export const freshNote = (system: System, wiring: string): Note => ({
  wiring,
  who: 'looks',
  history: 'worked',
  moments: [freshMoment(system)],
});

/** The same for the same question, whichever way round the probes are. */
export const testKey = (test: Test): string =>
  test.kind === 'reads'
    ? `${test.instrument}:${[...test.between].sort().join(':')}`
    : `${test.kind}:${test.part}`;

/** The answer that a moment has to a test, if any. */
export const answerTo = ({ finds }: Moment, test: Test): Observation | undefined =>
  finds.find((find) => testKey(find.test) === testKey(test));

/** A moment with one more finding; a new answer to the same test takes the place of the old one, which keeps its place. */
export function withFind(moment: Moment, find: Observation): Moment {
  const key = testKey(find.test);
  const finds = answerTo(moment, find.test)
    ? moment.finds.map((one) => (testKey(one.test) === key ? find : one))
    : [...moment.finds, find];
  return { ...moment, finds };
}

/** A moment without its answer to a test. */
export const withoutFind = (moment: Moment, test: Test): Moment => ({
  ...moment,
  finds: moment.finds.filter((one) => testKey(one.test) !== testKey(test)),
});

/** Whether a test can be made with these controls: continuity and ohms want every supply off, volts want one on. */
export const fitsControls = (system: System, settings: Settings, test: Test): boolean =>
  test.kind !== 'reads' ||
  isOnWith(system, settings) === (test.instrument === 'tester' || test.instrument === 'volts');

/** How many findings there are in all. */
export const countFinds = ({ moments }: Note): number =>
  moments.reduce((sum, { finds }) => sum + finds.length, 0);
