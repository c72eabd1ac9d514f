import type { Maker } from '../task.ts';
import { choice } from './choice.ts';
import { enoughToFail } from './enough-to-fail.ts';
import { nameLayout } from './name-layout.ts';
import { order } from './order.ts';
import { placeLead } from './place-lead.ts';
import { spotMistake } from './spot-mistake.ts';
import { sum } from './sum.ts';

/** Makers of items that do not read the state of one circuit: wiring, sums, layouts, procedures. */
export const others: readonly Maker[] = [
  placeLead,
  spotMistake,
  nameLayout,
  enoughToFail,
  sum,
  order,
  choice,
];
