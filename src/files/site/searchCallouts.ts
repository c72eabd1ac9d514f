import { loadCallouts } from './callouts.ts';
import type { Entry } from './searchIndex.ts';

/** The callouts by what their customers say, and the two pages for whoever looks for a fault. Nothing here tells what it was. */
export const calloutEntries = (root?: string): Entry[] => [
  {
    kind: 'Callout',
    to: '/callouts/',
    title: 'Callouts: find the fault with a meter',
    also: 'fault finding, diagnosis, breakdown, visits',
    text: 'A customer rings. Work the controls, look, isolate, measure, and say what is wrong.',
  },
  {
    kind: 'Callout',
    to: '/aid/',
    title: 'Find the fault on site',
    also: 'diagnosis aid, fault finder',
    text: 'Enter what you see and measure on a real visit: what may still be wrong, and the next best safe test.',
  },
  ...loadCallouts(root).map(
    ({ id, title, customer }): Entry => ({
      kind: 'Callout',
      to: `/callouts/${id}/`,
      title,
      of: 'Callouts',
      also: '',
      text: customer,
    }),
  ),
];
