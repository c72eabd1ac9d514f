import { nearestChange, sizeOf } from '../engine/grade/change.ts';
import { judgeFor } from '../engine/grade/judge-for.ts';
import type { System } from '../engine/model/system.ts';
import { wireKey } from '../engine/model/wiring.ts';
import { checkWires } from './attempt.ts';
import { startWiring } from './conversion.ts';
import { show } from './error.ts';
import { type Job, kindOf } from './job.ts';
import type { Reference } from './mistake.ts';

/** Tells one thing that does not fit: where it stands in the file, what was expected there, what was found. */
export type Fail = (path: readonly PropertyKey[], expected: string, found: string) => void;

/** A system made ready for the engine, and its right wirings. */
export interface Site {
  readonly system: System;
  readonly references: readonly Pick<Reference, 'id' | 'wires'>[];
}

/**
 * Whether a job can be done on its system: the names exist, locked wires are part of a right wiring, wires to be put
 * right are not right already, and a conversion has something to convert.
 * @param old the system that a conversion starts from
 * @throws FileError with the first name that nothing bears
 */
export function checkJob(job: Job, now: Site, old: Site | undefined, file: string, fail: Fail): void {
  checkWires(now.system, job.gives?.wires ?? [], file, ['gives', 'wires']);
  checkGiven(job, now, fail);
  if (job.from && old) checkConversion(job.from, now, old, file, fail);
}

function checkGiven(job: Job, { system, references }: Site, fail: Fail): void {
  const { gives } = job;
  if (!gives || gives.wires.length === 0) return;
  if (kindOf(job) === 'put-right') {
    if (judgeFor(system).judge(gives.wires).accepted)
      fail(['gives', 'wires'], 'a wiring with something to put right', 'one that is accepted as it is');
    return;
  }
  const strangers = references.map((reference) => {
    const there = new Set(reference.wires.map(wireKey));
    return { reference, wires: gives.wires.filter((wire) => !there.has(wireKey(wire))) };
  });
  const [nearest] = strangers.sort((a, b) => a.wires.length - b.wires.length);
  const [stranger] = nearest?.wires ?? [];
  if (nearest && !stranger) return;
  const found = nearest
    ? `${show(stranger?.join(' '))}, which even ${nearest.reference.id} lacks`
    : 'no reference';
  fail(['gives', 'wires'], 'only wires of one reference', found);
}

/** The old wiring is not right for the new system, and some right wiring can be made out of it. */
function checkConversion(
  from: NonNullable<Job['from']>,
  { system, references }: Site,
  old: Site,
  file: string,
  fail: Fail,
): void {
  const start = startWiring(from, old, system, file).wires;
  if (judgeFor(system).judge(start).accepted)
    fail(['from'], 'an old wiring that must be changed', 'one that is accepted as it is');
  const wanted = references.map(({ wires }) => wires);
  if (wanted.length === 0) fail(['system'], 'a system with a right wiring', 'no reference');
  else if (sizeOf(nearestChange(system, start, wanted).change) === 0)
    fail(['from'], 'an old wiring that must be changed', 'the circuit of a reference');
}
