import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';

/** A load of the controls: its watts, how many there are, and whether a valve's end switch carries it. */
export interface ControlLoad {
  readonly name: string;
  readonly watts: number;
  readonly count?: number;
  readonly throughEndSwitch?: boolean;
}

export const LOAD_WATTS: Range = { name: 'Load', unit: 'W', low: 0, high: 3000 };
export const LOAD_COUNT: Range = { name: 'How many', unit: '', low: 0, high: 20, whole: true };
export const END_SWITCH_AMPS: Range = { name: 'End switch rating', unit: 'A', low: 0.5, high: 10 };

/** Nominal supply (BS EN 60038) and the fuse of a heating spur (BS 1362; common practice). */
const VOLTS = 230;
export const SPUR_FUSE = 3;

/** Watts and amps of all loads together, and the amps through the end switch. */
export interface ControlSum {
  readonly watts: number;
  readonly amps: number;
  readonly endSwitchAmps: number;
  readonly fusePasses: boolean;
  readonly endSwitchPasses: boolean;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * Current of the controls against the 3 A fuse of their spur, and of an end switch against its rating. Taken at
 * 230 V and power factor 1, so motors draw somewhat more.
 * @param rating of the end switch, 0.5 to 10 A: 2 to 3 A is usual
 * @throws RangeError for watts, a count or a rating out of range
 */
export function controlSum(loads: readonly ControlLoad[], rating: number): Worked<ControlSum> {
  const wattsOf = ({ name, watts, count = 1 }: ControlLoad) =>
    within({ ...LOAD_WATTS, name }, watts) * within({ ...LOAD_COUNT, name: `${name}, how many` }, count);
  const term = ({ watts, count = 1 }: ControlLoad) => (count === 1 ? `${watts}` : `${count} × ${watts}`);
  const carried = loads.filter(({ throughEndSwitch }) => throughEndSwitch);
  const [watts, through] = [sum(loads.map(wattsOf)), sum(carried.map(wattsOf))];
  const [amps, endSwitchAmps] = [watts / VOLTS, through / VOLTS];
  within(END_SWITCH_AMPS, rating);
  const [fusePasses, endSwitchPasses] = [amps <= SPUR_FUSE, endSwitchAmps <= rating];
  const a = (value: number) => `${figure(value, 2, true)} A`;
  return {
    value: { watts, amps, endSwitchAmps, fusePasses, endSwitchPasses },
    source: 'Arithmetic at 230 V (BS EN 60038), power factor 1. Fuse: BS 1362. Ratings: see the part’s label',
    lines: [
      {
        what: 'All loads',
        rule: loads.map(({ name }) => name.toLowerCase()).join(' + '),
        put: loads.map(term).join(' + '),
        result: `${figure(watts)} W`,
      },
      { what: 'Current', rule: 'watts ÷ volts', put: `${figure(watts)} ÷ ${VOLTS}`, result: a(amps) },
      {
        what: 'Fuse of the spur',
        rule: `current at most ${SPUR_FUSE} A`,
        put: `${a(amps)} of ${SPUR_FUSE} A`,
        result: fusePasses ? 'a 3 A fuse carries it' : 'too much for a 3 A fuse',
        passes: fusePasses,
      },
      {
        what: 'Through the end switch',
        rule: `${carried.map(({ name }) => name.toLowerCase()).join(' + ') || 'nothing'}, watts ÷ volts`,
        put: `${figure(through)} ÷ ${VOLTS}`,
        result: a(endSwitchAmps),
      },
      {
        what: 'End switch',
        rule: `current at most its rating`,
        put: `${a(endSwitchAmps)} of ${rating} A`,
        result: endSwitchPasses ? 'within its rating' : 'above its rating',
        passes: endSwitchPasses,
      },
    ],
  };
}
