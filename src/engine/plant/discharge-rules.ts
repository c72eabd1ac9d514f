import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';
import { ADG } from './discharge-pipe.ts';

/** Longest pipe from the valve's outlet to the tundish, mm. Older texts print 500 and some 750: both are superseded. */
export const D1_LONGEST = 600;
export const D1_LENGTH: Range = { name: 'Length of D1', unit: 'mm', low: 1, high: 5000 };

/** What must hold beside the sizes, each with its paragraph of Approved Document G. */
export const DISCHARGE_RULES: readonly { readonly says: string; readonly paragraph: string }[] = [
  { says: 'D1 is metal and as short as can be.', paragraph: '3.50' },
  { says: 'D1 is not smaller than the valve’s outlet.', paragraph: '3.51' },
  { says: `D1 is ${D1_LONGEST} mm long at most.`, paragraph: '3.54' },
  {
    says: 'The tundish is upright, in the same space as the cylinder, near the valve and below it.',
    paragraph: '3.54',
  },
  { says: 'Water passing the tundish can be seen.', paragraph: '3.55' },
  { says: 'D2 drops straight down 300 mm or more before any bend.', paragraph: '3.56' },
  { says: 'After that D2 falls all the way, 1 in 200 or more.', paragraph: '3.56' },
  { says: 'D2 is metal, or another material proven for the heat and marked.', paragraph: '3.57' },
  { says: 'A D2 shared by valves is one size larger than the largest of their own.', paragraph: '3.59' },
  { says: 'The end is in a safe place, where it scalds nobody.', paragraph: '3.61' },
];

/**
 * Whether a D1 of so many mm is short enough.
 * @throws RangeError outside 1 to 5000 mm
 */
export function d1Length(length: number): Worked<boolean> {
  const passes = within(D1_LENGTH, length) <= D1_LONGEST;
  const over = figure(length - D1_LONGEST, 1);
  return {
    value: passes,
    source: `${ADG}, paragraph 3.54 and Diagram 1`,
    lines: [
      {
        what: 'Length of D1',
        rule: `at most ${D1_LONGEST} mm`,
        put: `${figure(length, 1)} mm`,
        result: passes ? 'short enough' : `${over} mm too long`,
        passes,
      },
    ],
  };
}
