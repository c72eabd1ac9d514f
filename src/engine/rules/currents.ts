import { mergeNets } from '../circuit/nets.ts';
import type { Load, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/** Volts that a load's ohms are rated at. */
const VOLTS = 230;

/** Amps of a load at 230 V, from its ohms; 0 where none are given. */
export function ampsOf({ parts }: System, { part, spec }: Load): number {
  const element = parts[part]!.kind.elements?.find(({ id }) => id === spec.id);
  return element ? VOLTS / element.ohms : 0;
}

/** Loads never change: a system's are added up once. */
const known = new WeakMap<System, number>();

/** Amps of all loads of a system together: no contact and no fuse can carry more, however it is wired. */
export function allAmps(system: System): number {
  const sum = known.get(system) ?? system.loads.reduce((amps, load) => amps + ampsOf(system, load), 0);
  known.set(system, sum);
  return sum;
}

/**
 * The most current, in amps, that can flow out of each starting node: the sum of all loads that can be reached from
 * it through wires and contacts, each contact taken as closed, without going back through a line of a supply. More
 * than will ever flow at once where two contacts never close together: an upper bound.
 */
export function makeReachable(system: System, wires: readonly Wire[]) {
  const { of, count } = mergeNets(system, wires);
  const poles = new Set(system.supplies.flatMap(({ line, out }) => [of[line]!, of[out.line]!]));
  const neighbours: { readonly net: number; readonly contact: number }[][] = Array.from(
    { length: count },
    () => [],
  );
  system.contacts.forEach(({ a, b }, contact) => {
    neighbours[of[a]!]!.push({ net: of[b]!, contact });
    neighbours[of[b]!]!.push({ net: of[a]!, contact });
  });
  const amps = new Float64Array(count);
  const live = new Set(system.supplies.flatMap(({ neutral, out }) => [of[neutral]!, of[out.neutral]!]));
  for (const load of system.loads) {
    if (load.spec.ownLoop) continue;
    // The end that is not on the neutral is the one that draws.
    const end = live.has(of[load.a]!) ? load.b : load.a;
    amps[of[end]!]! += ampsOf(system, load);
  }
  return (node: number, past: number): number => {
    const start = of[node]!;
    const seen = new Set([start]);
    let sum = 0;
    for (const net of seen) {
      sum += amps[net]!;
      if (poles.has(net) && net !== start) continue;
      for (const next of neighbours[net]!) {
        if (next.contact === past || (poles.has(next.net) && !poles.has(net))) continue;
        seen.add(next.net);
      }
    }
    return sum;
  };
}
