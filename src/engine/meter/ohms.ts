import type { Circuit } from './circuit.ts';
import { islandsOf } from './islands.ts';
import { nodal } from './nodal.ts';

/** Ohms between two nets of a dead circuit, diodes taken as open; 0 for one net, Infinity when nothing joins them. */
export function ohmsBetween({ count, branches }: Circuit, from: number, to: number): number {
  if (from === to) return 0;
  const resistors = branches.filter(({ diode }) => !diode);
  const island = islandsOf(count, resistors);
  if (island[from] !== island[to]) return Number.POSITIVE_INFINITY;
  const among = island.flatMap((name, net) => (name === island[from] ? [net] : []));
  const conductances = resistors.map(({ a, b, ohms }) => ({ a, b, siemens: 1 / ohms }));
  // One amp in at one net and out at the other: the volts between them are the ohms.
  const volts = nodal(count, among, conductances, { volts: new Map([[to, 0]]), amps: new Map([[from, 1]]) });
  return volts[from]!;
}
