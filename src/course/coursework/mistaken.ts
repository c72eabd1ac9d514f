import type { Judging } from '../../engine/grade/judge-for.ts';
import type { Verdict } from '../../engine/grade/verdict.ts';
import type { System } from '../../engine/model/system.ts';
import { distinctWires, type Wire, wireKey } from '../../engine/model/wiring.ts';
import type { Layout } from '../layout.ts';
import type { Random } from '../random.ts';

/** A wiring with one mistake in it, and what the judge says of it. */
export interface Mistaken {
  readonly wires: readonly Wire[];
  readonly verdict: Verdict;
}

/** So many mistakes are tried before a classic one is taken. */
const TRIES = 24;

type Slip = (system: System, wires: readonly Wire[], random: Random) => Wire[] | undefined;

const same = (a: Wire, b: Wire): boolean => wireKey(a) === wireKey(b);

/** Other terminals of the part that a terminal belongs to. */
function neighbours({ nodes, nodeOf, partOfNode, terminals }: System, terminal: string): string[] {
  const own = nodeOf.get(terminal);
  if (own === undefined) return [];
  return nodes.slice(0, terminals).filter((_, node) => node !== own && partOfNode[node] === partOfNode[own]);
}

/** One end of one wire on another terminal of the same part. */
const movesAnEnd: Slip = (system, wires, random) => {
  const wire = random.pick(wires);
  const end = random.int(2);
  const [kept, moved] = end === 0 ? [wire[1], wire[0]] : [wire[0], wire[1]];
  const among = neighbours(system, moved).filter((other) => other !== kept);
  if (among.length === 0) return undefined;
  const landed: Wire = [kept, random.pick(among)];
  if (wires.some((other) => same(other, landed))) return undefined;
  return wires.map((other) => (same(other, wire) ? landed : other));
};

/** One wire that nobody landed. */
const leavesOneOut: Slip = (_, wires, random) => {
  const wire = random.pick(wires);
  return wires.filter((other) => !same(other, wire));
};

/** Two cores of one part that changed places at their far ends. */
const swapsTwo: Slip = (_, wires, random) => {
  const partOf = (terminal: string) => terminal.slice(0, terminal.indexOf('/'));
  const [wire, flip] = [random.pick(wires), random.int(2)];
  const [near, far] = flip === 0 ? wire : [wire[1], wire[0]];
  const others = wires.flatMap(([a, b]): Wire[] => [
    ...(partOf(a) === partOf(near) && a !== near && b !== far ? [[a, b] as const] : []),
    ...(partOf(b) === partOf(near) && b !== near && a !== far ? [[b, a] as const] : []),
  ]);
  if (others.length === 0) return undefined;
  const [otherNear, otherFar] = random.pick(others);
  const [one, two]: [Wire, Wire] = [
    [near, otherFar],
    [otherNear, far],
  ];
  if ([one, two].some(([a, b]) => a === b)) return undefined;
  const left = wires.filter((other) => !same(other, wire) && !same(other, [otherNear, otherFar]));
  return left.some((other) => same(other, one) || same(other, two)) ? undefined : [...left, one, two];
};

const slips: readonly Slip[] = [movesAnEnd, leavesOneOut, swapsTwo];

/**
 * A right wiring of a layout with one mistake, dealt by chance, that the judge rejects: an end moved, a wire left out,
 * two cores swapped, or one of the classic mistakes.
 * @throws RangeError for a layout of which no wiring is wrong
 */
export function mistaken(
  { id, system, right, wrong }: Layout,
  judge: Judging['judge'],
  random: Random,
): Mistaken {
  for (let k = 0; k < TRIES; k++) {
    const classic = random.int(slips.length + 1) === slips.length && wrong.length > 0;
    const wires = classic
      ? random.pick(wrong).wires
      : random.pick(slips)(system, distinctWires(random.pick(right).wires), random);
    if (!wires) continue;
    const verdict = judge(wires);
    if (!verdict.accepted) return { wires, verdict };
  }
  for (const { wires } of random.shuffle(wrong)) {
    const verdict = judge(wires);
    if (!verdict.accepted) return { wires, verdict };
  }
  throw new RangeError(`expected a layout with a wrong wiring, found "${id}"`);
}
