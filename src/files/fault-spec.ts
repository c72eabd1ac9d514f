import * as z from 'zod/mini';
import {
  type Candidate,
  candidateOf,
  misplacedCandidates,
  strayCandidates,
  swappedCandidates,
  together,
} from '../engine/diagnose/candidate.ts';
import { allFailures, failureId } from '../engine/faults/failure.ts';
import type { System } from '../engine/model/system.ts';
import { type Wire, wireKey } from '../engine/model/wiring.ts';
import { FileError, show } from './error.ts';
import { wire } from './names.ts';
import { placeAt } from './place.ts';
import { keys, text } from './shape.ts';
import { oneOf } from './suggest.ts';

const says = 'a fault: one of fail, break, landed, swap, link';
const pair = wire;

/** One fault, as content names it: exactly one of its keys is there. */
export const faultSpec = keys(says, {
  fail: z.exactOptional(text('a failure of a part: part/failure')),
  break: z.exactOptional(wire),
  landed: z.exactOptional(
    keys('a wire landed wrong: wire, as', {
      wire,
      as: wire,
    }),
  ),
  swap: z.exactOptional(pair),
  link: z.exactOptional(pair),
}).check(
  z.refine((fault) => Object.keys(fault).length === 1, { error: says }),
  z.meta({ minProperties: 1, maxProperties: 1 }),
);

/** A failed part, a broken wire, a wire landed wrong, two cores that changed places, or a link too many. */
export type FaultSpec = z.infer<typeof faultSpec>;

/**
 * What is wrong, made from what a file says of it: one fault, or several at once.
 * @param path where the faults stand in the file
 * @throws FileError when the system or its drawing has no such part, failure or wire, or two faults shut each other out
 */
export function faultOf(
  system: System,
  wires: readonly Wire[],
  specs: readonly FaultSpec[],
  file: string,
  path: readonly PropertyKey[],
): Candidate {
  const singles = specs.map((spec, k) => single(system, wires, spec, file, [...path, k]));
  return singles.reduce(
    (sum, one, k) => {
      const both = together(system, sum, one);
      if (both) return both;
      const place = placeAt([...path, k]);
      throw new FileError({
        file,
        place,
        expected: 'a fault that can be there beside the others',
        found: one.says,
      });
    },
    candidateOf(system, []),
  );
}

function single(
  system: System,
  wires: readonly Wire[],
  spec: FaultSpec,
  file: string,
  path: readonly PropertyKey[],
): Candidate {
  const fail = (key: string, expected: string, found: unknown): never => {
    throw new FileError({ file, place: placeAt([...path, key]), expected, found: show(found) });
  };
  const spelt = ([a, b]: Wire) => `${a} ${b}`;
  if (spec.fail !== undefined) {
    const known = new Map(
      allFailures(system, []).map((one) => [failureId(system, one).replace(': ', '/'), one]),
    );
    const failure =
      known.get(spec.fail) ?? fail('fail', oneOf(spec.fail, nearest(known.keys(), spec.fail)), spec.fail);
    return candidateOf(system, [failure]);
  }
  if (spec.break) {
    const drawn = wires.find((one) => wireKey(one) === wireKey(spec.break as Wire));
    if (!drawn) fail('break', 'a wire of the drawing', spelt(spec.break));
    return candidateOf(system, [{ wire: drawn as Wire }]);
  }
  if (spec.landed) {
    const { wire: from, as } = spec.landed;
    const same = ([one]: Candidate['misplaced']) =>
      one !== undefined && wireKey(one.wire) === wireKey(from) && wireKey(one.landed) === wireKey(as);
    const found = misplacedCandidates(system, wires).find(({ misplaced }) => same(misplaced));
    const expected = 'a wire of the drawing, and one end of it on another terminal of the same part';
    return found ?? fail('landed', expected, `${spelt(from)} as ${spelt(as)}`);
  }
  if (spec.swap) {
    const both = [...spec.swap].sort().join(' ');
    const found = swappedCandidates(system, wires).find(
      ({ misplaced }) =>
        misplaced
          .map((one) => movedCore(one))
          .sort()
          .join(' ') === both,
    );
    return (
      found ?? fail('swap', 'two terminals of one part, each with one wire of its own', spelt(spec.swap))
    );
  }
  const link = spec.link as Wire;
  const found = strayCandidates(system, wires).find(
    ({ strays: [stray] }) => stray && wireKey(stray) === wireKey(link),
  );
  return found ?? fail('link', 'two neighbouring ways of a strip that no link joins', spelt(link));
}

/** The end of a swapped core that stays where it is. */
const movedCore = ({ wire: drawn, landed }: Candidate['misplaced'][number]): string =>
  drawn.find((end) => landed.includes(end)) as string;

/** Failures of the part that a name speaks of, or all when there is no such part. */
function nearest(known: Iterable<string>, name: string): string[] {
  const all = [...known];
  const own = all.filter((one) => one.startsWith(`${name.split('/')[0]}/`));
  return own.length > 0 ? own : all;
}
