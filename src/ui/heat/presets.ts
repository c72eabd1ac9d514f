import { type DaySettings, type DrawOff, ORDINARY_DAY } from '../../engine/faults/day/settings.ts';

/** What a learner may choose of the day. */
export interface Choice {
  readonly failAt: number;
  readonly litres: number;
  readonly thermostat: number;
  readonly draws: string;
  readonly heating: 'winter' | 'summer';
  readonly flow: number;
  readonly flowFails: boolean;
  readonly limitResets: boolean;
}

export const FAIL_HOURS: readonly number[] = Array.from({ length: 24 }, (_, hour) => hour);
export const LITRES: readonly number[] = [120, 150, 180, 210, 250, 300];
export const THERMOSTATS: readonly number[] = [50, 55, 60, 65, 70];
export const FLOWS: readonly number[] = [65, 75, 82];

/** Days of hot water use. Assumptions, to show the range. */
export const DRAWS: readonly { id: string; title: string; draws: readonly DrawOff[] }[] = [
  { id: 'ordinary', title: 'Usual: 200 litres', draws: ORDINARY_DAY.draws },
  {
    id: 'baths',
    title: 'Baths: 300 litres',
    draws: [
      { at: 7, litres: 45 },
      { at: 12.5, litres: 15 },
      { at: 18.5, litres: 80 },
      { at: 19.5, litres: 80 },
      { at: 20.5, litres: 80 },
    ],
  },
  { id: 'none', title: 'None: away', draws: [] },
];

export const FIRST_CHOICE: Choice = {
  failAt: ORDINARY_DAY.failAt,
  litres: ORDINARY_DAY.litres,
  thermostat: ORDINARY_DAY.thermostat,
  draws: 'ordinary',
  heating: 'winter',
  flow: ORDINARY_DAY.flow,
  flowFails: false,
  limitResets: false,
};

/** The day that a choice describes. */
export function dayOf({ draws, heating, ...chosen }: Choice): DaySettings {
  return {
    ...ORDINARY_DAY,
    ...chosen,
    draws: DRAWS.find(({ id }) => id === draws)?.draws ?? [],
    heating: heating === 'winter' ? ORDINARY_DAY.heating : [],
  };
}
