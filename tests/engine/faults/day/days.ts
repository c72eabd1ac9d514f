import type { EventKind } from '../../../../src/engine/faults/day/events.ts';
import type { DayRun, Sample } from '../../../../src/engine/faults/day/record.ts';
import { runDay } from '../../../../src/engine/faults/day/run.ts';
import { type DaySettings, ORDINARY_DAY } from '../../../../src/engine/faults/day/settings.ts';
import { allFailures, failureId } from '../../../../src/engine/faults/failure.ts';
import { positionOf } from '../../../../src/engine/model/system.ts';
import type { Wire } from '../../../../src/engine/model/wiring.ts';
import { system } from '../../support/flagship.ts';
import { must } from '../../support/must.ts';

/** A day of a wiring with failures by name. */
export function day(
  wires: readonly Wire[],
  fail: readonly string[] = [],
  more: Partial<DaySettings> = {},
): DayRun {
  const known = allFailures(system, wires);
  const failures = fail.map((id) =>
    must(
      known.find((failure) => failureId(system, failure) === id),
      id,
    ),
  );
  return runDay(system, wires, { ...ORDINARY_DAY, ...more }, failures);
}

export const first = ({ events }: DayRun, kind: EventKind) => events.find((event) => event.kind === kind);

export const standsAt = (part: string, { place }: Sample): string =>
  positionOf(
    system,
    must(
      system.parts.find(({ id }) => id === part),
      part,
    ),
    place,
  );

/** Samples from a time on, seconds. */
export const samplesFrom = ({ samples }: DayRun, seconds: number): Sample[] =>
  samples.filter((sample) => sample.seconds >= seconds);
