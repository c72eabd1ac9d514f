import { solve } from './solve.ts';

/** Siemens between two nets. */
export interface Conductance {
  readonly a: number;
  readonly b: number;
  readonly siemens: number;
}

/** What is given: volts of some nets (at least one in every island solved), amps fed into others. */
export interface Given {
  readonly volts: ReadonlyMap<number, number>;
  readonly amps?: ReadonlyMap<number, number>;
}

/**
 * Nodal solution: volts of the nets in `among`, from Kirchhoff's current law in each. Nets outside `among` read 0.
 * Throws a RangeError when a net in `among` is tied to no given volts.
 */
export function nodal(
  count: number,
  among: readonly number[],
  conductances: readonly Conductance[],
  { volts, amps }: Given,
): Float64Array {
  const answer = new Float64Array(count);
  for (const [net, value] of volts) answer[net] = value;
  const unknown = among.filter((net) => !volts.has(net));
  const row = new Map(unknown.map((net, k) => [net, k]));
  const rows = unknown.map(() => new Float64Array(unknown.length));
  const right = Float64Array.from(unknown, (net) => amps?.get(net) ?? 0);
  for (const { a, b, siemens } of conductances) {
    for (const [here, there] of [
      [a, b],
      [b, a],
    ] as const) {
      const k = row.get(here);
      if (k === undefined || a === b) continue;
      rows[k]![k]! += siemens;
      const other = row.get(there);
      if (other === undefined) right[k]! += siemens * answer[there]!;
      else rows[k]![other]! -= siemens;
    }
  }
  const solved = solve(rows, right);
  unknown.forEach((net, k) => {
    answer[net] = solved[k]!;
  });
  return answer;
}
