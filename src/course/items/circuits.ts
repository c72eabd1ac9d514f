import type { Maker } from '../task.ts';
import { deadTest } from './dead-test.ts';
import { liveTerminals } from './live-terminals.ts';
import { meterReading } from './meter-reading.ts';
import { pathOrder } from './path-order.ts';
import { setSwitches } from './set-switches.ts';
import { valveGoes } from './valve-goes.ts';
import { whatWorks } from './what-works.ts';
import { whereStops } from './where-stops.ts';

/** Makers of questions about what a circuit does. */
export const circuits: readonly Maker[] = [
  liveTerminals,
  whereStops,
  pathOrder,
  deadTest,
  meterReading,
  setSwitches,
  valveGoes,
  whatWorks,
];
