import * as z from 'zod/mini';
import { keys, list, pattern, text } from './shape.ts';

const suitsSays = 'yes, no or with-additions';
const words = (expected: string) => list(expected, text('some words'));

/** What people want to know of a layout and no circuit can tell: its names, where it is met, what the rules say of it. */
export const aboutSchema = keys(
  'about a system: summary, alsoCalled, met, callsBoiler, atRest, for, against, unvented, regulations',
  {
    summary: text('what the layout is, in one or two sentences'),
    alsoCalled: words('a list of the names the trade uses'),
    met: text('where it is met'),
    callsBoiler: text('who calls the boiler'),
    atRest: text('where the valves rest'),
    for: words('a list of what speaks for it'),
    against: words('a list of what speaks against it'),
    unvented: keys('whether it suits an unvented cylinder: suits, says', {
      suits: z.enum(['yes', 'no', 'with-additions'], { error: suitsSays }),
      says: text('why, or what it needs'),
    }),
    regulations: list(
      'a list of what the regulations say of it',
      keys('what a regulation says: says, source', {
        says: text('what it asks, in plain words'),
        // An edition or an amendment has a year: a rule without one cannot be looked up.
        source: pattern(
          'a document with the year of its edition, or common practice',
          /\b(19|20)\d\d\b|^common practice/,
        ),
      }),
    ),
  },
);

/** A layout in words. */
export type About = z.infer<typeof aboutSchema>;
