import { failSystem, failWires } from '../faults/apply.ts';
import { allFailures, compatible, type Failure, failureId, sayFailure } from '../faults/failure.ts';
import type { System } from '../model/system.ts';
import { canonicalWires, type Wire, wireKey } from '../model/wiring.ts';
import { capital, sayNode } from '../rules/words.ts';

/** A wire that somebody landed on another terminal than the drawing says. */
export interface Misplaced {
  readonly wire: Wire;
  readonly landed: Wire;
}

/** What may be wrong with a system: parts that failed, wires that broke, wires landed wrong, links too many. Nothing, when all are empty. */
export interface Candidate {
  /** The same for the same fault, whatever the order in which it was made up. */
  readonly id: string;
  /** As a person says it, a sentence without its full stop. */
  readonly says: string;
  readonly failures: readonly Failure[];
  readonly misplaced: readonly Misplaced[];
  /** Links that the drawing does not have. */
  readonly strays: readonly Wire[];
}

/** A candidate from its failures and misplaced wires; without any, the candidate that nothing is wrong. */
export function candidateOf(
  system: System,
  failures: readonly Failure[],
  misplaced: readonly Misplaced[] = [],
  strays: readonly Wire[] = [],
): Candidate {
  const ids = [
    ...failures.map((failure) => failureId(system, failure)),
    ...misplaced.map(({ wire, landed }) => `landed: ${wireKey(wire)} as ${wireKey(landed)}`),
    ...strays.map((link) => `link: ${wireKey(link)}`),
  ];
  const said = [
    ...failures.map((failure) => sayFailure(system, failure)),
    ...misplaced.map((one) => sayMisplaced(system, one)),
    ...strays.map(
      (link) =>
        `a link too many joins ${[...link]
          .sort()
          .map((end) => say(system, end))
          .join(' and ')}`,
    ),
  ];
  const says = said.length === 0 ? 'nothing is wrong' : said.sort().join(', and ');
  return { id: ids.sort().join(' + ') || 'nothing', says: capital(says), failures, misplaced, strays };
}

const say = (system: System, end: string): string => sayNode(system, system.nodeOf.get(end)!);

function sayMisplaced(system: System, { wire, landed }: Misplaced): string {
  const kept = wire.find((end) => landed.includes(end))!;
  const was = wire.find((end) => end !== kept)!;
  const now = landed.find((end) => end !== kept)!;
  return `the wire from ${say(system, kept)} to ${say(system, was)} is landed on ${say(system, now)}`;
}

/** Two candidates at once, or undefined when they cannot both be there. */
export function together(system: System, a: Candidate, b: Candidate): Candidate | undefined {
  if (!a.failures.every((one) => b.failures.every((other) => compatible(one, other)))) return undefined;
  const touched = ({ failures, misplaced }: Candidate) => [
    ...failures.flatMap((failure) => ('wire' in failure ? [wireKey(failure.wire)] : [])),
    ...misplaced.map(({ wire }) => wireKey(wire)),
  ];
  if (touched(a).some((key) => touched(b).includes(key))) return undefined;
  return candidateOf(
    system,
    [...a.failures, ...b.failures],
    [...a.misplaced, ...b.misplaced],
    [...a.strays, ...b.strays],
  );
}

/** Each failure of each part and each broken wire. */
export const failureCandidates = (system: System, wires: readonly Wire[]): Candidate[] =>
  allFailures(system, canonicalWires(wires)).map((failure) => candidateOf(system, [failure]));

/** Each wire landed, at either end, on any other terminal of the part it belongs to: the next way of a strip, the wrong core of a valve. */
export function misplacedCandidates(system: System, wires: readonly Wire[]): Candidate[] {
  const there = new Set(wires.map(wireKey));
  return canonicalWires(wires).flatMap((wire) =>
    ([0, 1] as const).flatMap((end) => {
      const kept = wire[1 - end]!;
      return neighbours(system, wire[end]).flatMap((now): Candidate[] => {
        const landed: Wire = [kept, now];
        const idle = kept === now || there.has(wireKey(landed));
        return idle ? [] : [candidateOf(system, [], [{ wire, landed }])];
      });
    }),
  );
}

/** Other terminals of the same part. */
function neighbours({ nodes, nodeOf, partOfNode, terminals }: System, name: string): string[] {
  const own = nodeOf.get(name)!;
  return nodes.slice(0, terminals).filter((_, node) => node !== own && partOfNode[node] === partOfNode[own]);
}

/**
 * Two cores of one part that changed places at their far ends: white and grey swapped, line and neutral reversed. Only
 * terminals with one wire each; the terminals of a strip are left out, for there a swap is two misplaced wires.
 */
export function swappedCandidates(system: System, wires: readonly Wire[]): Candidate[] {
  const all = canonicalWires(wires);
  return system.parts.flatMap(({ id, kind }) => {
    const cores = kind.terminals.flatMap((terminal) => {
      const name = `${id}/${terminal.id}`;
      const own = all.filter((wire) => wire.includes(name));
      return terminal.duty === 'joint' || own.length !== 1 ? [] : [{ name, wire: own[0]! }];
    });
    return cores.flatMap((a, k) =>
      cores.slice(k + 1).flatMap((b): Candidate[] => {
        const [farA, farB] = [a, b].map(({ name, wire }) => wire.find((end) => end !== name)!);
        if (farA === farB || wireKey(a.wire) === wireKey(b.wire)) return [];
        return [
          candidateOf(
            system,
            [],
            [
              { wire: a.wire, landed: [a.name, farB!] },
              { wire: b.wire, landed: [b.name, farA!] },
            ],
          ),
        ];
      }),
    );
  });
}

/** Each link too many between neighbouring ways of a strip. */
export function strayCandidates(system: System, wires: readonly Wire[]): Candidate[] {
  const there = new Set(wires.map(wireKey));
  return system.parts.flatMap(({ id, kind }) =>
    kind.terminals.slice(1).flatMap((terminal, k): Candidate[] => {
      const link: Wire = [`${id}/${kind.terminals[k]!.id}`, `${id}/${terminal.id}`];
      const idle = terminal.duty !== 'joint' || there.has(wireKey(link));
      return idle ? [] : [candidateOf(system, [], [], [link])];
    }),
  );
}

/** Every single fault: each failure of each part, each broken wire, each misplaced wire. */
export const singleCandidates = (system: System, wires: readonly Wire[]): Candidate[] => [
  ...failureCandidates(system, wires),
  ...misplacedCandidates(system, wires),
];

/** The system and its wires with a candidate in them; parts in `renewed` have none of their failures any more. */
export function withFault(
  system: System,
  wires: readonly Wire[],
  { failures, misplaced, strays }: Candidate,
  renewed: ReadonlySet<string> = new Set(),
): { readonly system: System; readonly wires: readonly Wire[]; readonly left: readonly Failure[] } {
  const left = failures.filter((one) => 'wire' in one || !renewed.has(system.parts[one.part]!.id));
  const moved = new Map(misplaced.map(({ wire, landed }) => [wireKey(wire), landed]));
  const landed = moved.size === 0 ? wires : wires.map((wire) => moved.get(wireKey(wire)) ?? wire);
  const found = strays.length === 0 ? landed : [...landed, ...strays];
  return { system: failSystem(system, left), wires: failWires(found, left), left };
}
