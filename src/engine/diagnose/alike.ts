import { mergeNets } from '../circuit/nets.ts';
import type { System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { openWays } from '../plant/paths.ts';
import type { Bench } from './bench.ts';
import { type Candidate, withFault } from './candidate.ts';
import { partDoes } from './look.ts';
import { layOut, type Standing, settle } from './rig.ts';
import { arrive, type Setup } from './setup.ts';
import { enter, type Stand, standsFrom } from './world.ts';

/** Systems with more configurations than this are not explored to the end for every pair of candidates. */
const MOST_CONFIGURATIONS = 1 << 14;

/** What a stand shows: which terminals are joined, what is open inside, what works, where the valves stand. All readings follow from it. */
function shows(stand: Stand): string {
  const { system, nets, wired, works, standing } = stand;
  const first = new Map<number, number>();
  let joined = '';
  const note = (node: number) => {
    const net = nets[node]!;
    if (!first.has(net)) first.set(net, first.size);
    joined += `${first.get(net)}${wired[net] === 1 ? '' : '*'},`;
  };
  for (let node = 0; node < system.terminals; node++) note(node);
  for (const { line, neutral, earth } of system.supplies) [line, neutral, earth].forEach(note);
  const open = system.loads.flatMap(({ dead }, k) => (dead ? [k] : []));
  const busy = system.parts.flatMap((_, part) => (partDoes(stand, part) ? [part] : []));
  return `${standing}|${joined}|${open}|${works}|${busy}|${heatWays(stand)}`;
}

/** Where the heat of each source can go. */
const heatWays = (stand: Stand): string =>
  [...openWays(stand.pipework, stand.place)].map(([from, to]) => `${from}>${[...to]}`).join();

/** Splits each group by a key; groups of one are done with. */
function split(groups: readonly Candidate[][], key: (one: Candidate) => string): Candidate[][] {
  return groups.flatMap((group) => {
    if (group.length === 1) return [group];
    const byKey = Map.groupBy(group, key);
    return [...byKey.values()];
  });
}

/**
 * Groups of candidates that nothing can tell apart: with any settings set in any order from cold, they behave the same
 * and every pair of terminals reads the same. Lifting and bridging are not counted. Every candidate is in one group;
 * the order is kept.
 *
 * Where a system has too many states for that, candidates that differ on arrival under some settings are told apart, and
 * of the others only those are alike whose circuits are the same: sound, but a group may come out as several.
 */
export function alikeGroups(
  bench: Bench,
  wires: readonly Wire[],
  candidates: readonly Candidate[],
): Candidate[][] {
  const { system } = bench;
  const cold = arrive(system, wires, {});
  let groups: Candidate[][] = [[...candidates]];
  for (const inputs of probes(system)) {
    if (groups.every((group) => group.length === 1)) break;
    groups = split(groups, (one) => onArrival(bench, { ...cold, inputs }, one));
  }
  groups = split(groups, inFull(bench, wires));
  const rank = new Map(candidates.map(({ id }, k) => [id, k]));
  return groups.sort(([a], [b]) => rank.get(a!.id)! - rank.get(b!.id)!);
}

/** The candidates, besides this one, that nothing can tell from it: see `alikeGroups`, whose group of it this is. */
export function alikeTo(
  bench: Bench,
  wires: readonly Wire[],
  one: Candidate,
  candidates: readonly Candidate[],
): Candidate[] {
  const cold = arrive(bench.system, wires, {});
  const same = (key: (candidate: Candidate) => string) => {
    const own = key(one);
    left = left.filter((other) => key(other) === own);
  };
  let left = candidates.filter(({ id }) => id !== one.id);
  for (const inputs of probes(bench.system)) {
    if (left.length === 0) return [];
    same((candidate) => onArrival(bench, { ...cold, inputs }, candidate));
  }
  same(inFull(bench, wires));
  return left;
}

/** What a candidate shows on arrival. */
const onArrival = (bench: Bench, setup: Setup, candidate: Candidate): string =>
  enter(bench, setup, candidate).stands.map(shows).join(' ');

/** All there is to know of a candidate, as a text: the same for those that are alike. */
function inFull(bench: Bench, wires: readonly Wire[]): (candidate: Candidate) => string {
  const { system } = bench;
  const wide = system.places * 2 ** system.inputs.length > MOST_CONFIGURATIONS;
  const cold = arrive(system, wires, {});
  return (one) => (wide ? structure(system, wires, one) : whole(bench, cold, one));
}

/** Settings to look at first: all at rest, each alone with the supply on, all. */
function probes({ inputs, supply }: System): number[] {
  const on = supply.input < 0 ? 0 : 1 << supply.input;
  return [0, on, ...inputs.map((_, k) => on | (1 << k)), 2 ** inputs.length - 1];
}

/** Everything that settings can bring about with a candidate, as one text. */
function whole(bench: Bench, cold: Setup, candidate: Candidate): string {
  const combinations = 2 ** bench.system.inputs.length;
  const [start] = enter(bench, cold, candidate).stands;
  const known = new Set<Standing>([start!.standing]);
  for (let before = 0; before !== known.size; ) {
    before = known.size;
    for (let inputs = 0; inputs < combinations; inputs++) {
      const rig = layOut(bench, { ...cold, inputs }, candidate);
      for (const rest of settle(rig, [...known])) known.add(rest);
    }
  }
  const starts = [...known].sort((a, b) => a - b);
  let text = '';
  for (let inputs = 0; inputs < combinations; inputs++) {
    const rig = layOut(bench, { ...cold, inputs }, candidate);
    const rests = starts.map((from) => settle(rig, [from]).sort((a, b) => a - b));
    text += `${inputs}:${rests.join('/')} `;
    text += standsFrom(bench, rig, [...new Set(rests.flat())])
      .map(shows)
      .join(' ');
  }
  return text;
}

/** A candidate's circuit and mechanics, whatever it is called. */
function structure(system: System, wires: readonly Wire[], candidate: Candidate): string {
  const { wires: left } = withFault(system, wires, candidate);
  const parts = candidate.failures.map((one) =>
    'wire' in one ? '' : JSON.stringify([one.part, { ...one.spec, id: '', says: '' }]),
  );
  return `${mergeNets(system, left).of} ${parts.sort()}`;
}
