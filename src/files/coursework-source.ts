import type { CalloutAddress } from '../course/callouts/address.ts';
import { writeCallout } from '../course/callouts/address.ts';
import { madeCallout, wiringOfSeed } from '../course/callouts/made.ts';
import type { GradeSource, Posed } from '../course/coursework/source.ts';
import type { Layout } from '../course/layout.ts';
import type { Shelf } from '../course/task.ts';
import { type Bench, makeBench } from '../engine/diagnose/bench.ts';
import type { Candidate } from '../engine/diagnose/candidate.ts';
import { type Judging, judgeFor } from '../engine/grade/judge-for.ts';
import type { CalloutFile } from './callout.ts';
import { candidatesFor, makeCalloutFrom } from './callout-pack.ts';
import type { DoubleFault } from './double-faults.ts';
import type { JobStart } from './job-start.ts';

/** The files that grading reads, however they were come by: from a folder, or over the network. */
export interface GradeFiles extends Shelf {
  /** Both throw a RangeError for an id that is not there. */
  readonly job: (id: string) => JobStart;
  readonly callout: (id: string) => CalloutFile;
  readonly doubles: readonly DoubleFault[];
}

/** Made callouts kept ready: whoever is graded next is often of the same class. */
const MOST_POSED = 200;

/** Makes a thing when it is first asked for, and remembers it; of too many, the oldest goes. */
function remembered<T>(make: (key: string) => T, most = Number.POSITIVE_INFINITY): (key: string) => T {
  const known = new Map<string, T>();
  return (key) => {
    const ready = known.get(key);
    if (ready !== undefined) return ready;
    const fresh = make(key);
    if (known.size >= most) for (const oldest of known.keys()) if (known.delete(oldest)) break;
    known.set(key, fresh);
    return fresh;
  };
}

/** A source for grading that makes each judge, bench and list of candidates once. */
export function makeSource({ layout, quiz, job, callout, doubles }: GradeFiles): GradeSource {
  const judging = remembered((id): Judging => judgeFor(layout(id).system));
  const bench = remembered((id): Bench => makeBench(layout(id).system));
  const listed = remembered((key): Candidate[] => {
    const [id = '', wiring] = key.split(' ');
    return candidatesFor(layout(id), wiring, doubles);
  });
  const candidates = ({ id, right }: Layout, wiring: string | undefined) =>
    listed(`${id} ${wiring ?? right[0]?.id ?? ''}`);

  const authored = remembered((id): Posed => {
    const file = callout(id);
    const own = layout(file.system);
    return {
      bench: bench(own.id),
      callout: makeCalloutFrom(own, file),
      candidates: candidates(own, file.wiring),
    };
  });
  const made = ({ system, seed, level }: Extract<CalloutAddress, { kind: 'made' }>): Posed => {
    const own = layout(system);
    const all = candidates(own, wiringOfSeed(own, seed).id);
    const { callout: posed, alike } = madeCallout(own, bench(own.id), all, { seed, level });
    return { bench: bench(own.id), callout: posed, candidates: all, alike };
  };
  const posed = new Map<string, Posed>();
  return {
    layout,
    quiz,
    job,
    judging,
    visit: (address) => {
      if (address.kind === 'authored') return authored(address.id);
      const key = writeCallout(address);
      const known = posed.get(key) ?? made(address);
      posed.delete(key);
      posed.set(key, known);
      for (const oldest of posed.keys()) if (posed.size > MOST_POSED) posed.delete(oldest);
      return known;
    },
  };
}
