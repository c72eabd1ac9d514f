import type { Layout, RightWiring } from '../course/layout.ts';
import { seedOf } from '../course/random.ts';
import { allCandidates, type Callout, type Complaint } from '../engine/diagnose/callout.ts';
import type { Candidate } from '../engine/diagnose/candidate.ts';
import type { Observation } from '../engine/diagnose/evidence.ts';
import { type Family, familyOf } from '../engine/diagnose/symptom.ts';
import type { CalloutFile, ComplaintSpec } from './callout.ts';
import type { DoubleFault } from './double-faults.ts';
import { FileError, show } from './error.ts';
import { faultOf } from './fault-spec.ts';
import { oneOf } from './suggest.ts';

/** What a list of callouts shows: nothing of the fault. */
export interface CalloutCard {
  readonly id: string;
  readonly title: string;
  /** Id of the system. */
  readonly system: string;
  readonly level: 1 | 2 | 3;
  readonly family: Family;
  /** What the customer says. */
  readonly customer: string;
}

/** What a complaint claims, as an observation of the engine. */
export function observationOf({ part, is }: ComplaintSpec): Observation {
  const kind = is === 'works' || is === 'idle' ? 'works' : 'warms';
  return { test: { kind, part }, outcome: is === 'works' || is === 'warm' };
}

/**
 * The wiring that a callout or a double fault is about: a right one of its layout, the first unless told.
 * @throws FileError when the layout has no such right wiring
 */
export function wiringOf(
  { right }: Layout,
  id: string | undefined,
  file: string,
  place = 'wiring',
): RightWiring {
  const found = id === undefined ? right[0] : right.find((one) => one.id === id);
  if (found) return found;
  const ids = right.map((one) => one.id);
  throw new FileError({ file, place, expected: oneOf(id, ids), found: show(id) });
}

/** The complaints of a callout, as the engine takes them. */
export const complaintsIn = ({ complaints }: Pick<CalloutFile, 'complaints'>): Complaint[] =>
  complaints.map((one) => ({ settings: one.set, ...observationOf(one) }));

/** What a list shows of a callout. */
export const cardOf = ({ system }: Layout, file: CalloutFile): CalloutCard => ({
  id: file.id,
  title: file.title,
  system: file.system,
  level: file.level,
  family: familyOf({ system, complaints: complaintsIn(file) }),
  customer: file.customer,
});

/**
 * A callout made ready for the engine. The same file always gives the same one.
 * @param name of the file, for errors; its id unless told
 * @throws FileError when the layout has no such wiring, or no such fault can be in it
 */
export function makeCalloutFrom(layout: Layout, file: CalloutFile, name = file.id): Callout {
  const { wires } = wiringOf(layout, file.wiring, name);
  return {
    system: layout.system,
    wires,
    fault: faultOf(layout.system, wires, file.fault, name, ['fault']),
    complaints: complaintsIn(file),
    found: file.found,
    seed: seedOf(file.id),
  };
}

/**
 * Everything that may be wrong with a wiring of a layout, the double faults of that wiring among it: what a visit is
 * searched and judged by.
 * @param wiring id of a right wiring; the first unless told
 * @throws FileError when a double fault cannot be there
 */
export function candidatesFor(
  layout: Layout,
  wiring: string | undefined,
  doubles: readonly DoubleFault[],
  name = 'double faults',
): Candidate[] {
  const { id, wires } = wiringOf(layout, wiring, name);
  const own = doubles.flatMap((double, k): Candidate[] =>
    double.system === layout.id && wiringOf(layout, double.wiring, name, `[${k}].wiring`).id === id
      ? [faultOf(layout.system, wires, double.faults, name, [k, 'faults'])]
      : [],
  );
  return allCandidates(layout.system, wires, own);
}
