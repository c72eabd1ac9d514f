import { joinedTo, wireJoints } from '../circuit/plain.ts';
import type { System } from '../model/system.ts';
import { distinctWires, type Wire } from '../model/wiring.ts';
import { makeReachable } from './currents.ts';

/** What wires alone join, with every contact taken as open. */
export interface WiringView {
  readonly system: System;
  readonly wires: readonly Wire[];
  /** Per node: joined by wires alone to the terminal that brings line, neutral, earth. */
  readonly line: readonly boolean[];
  readonly neutral: readonly boolean[];
  readonly earth: readonly boolean[];
  /** Per terminal: how many wires meet in it. */
  readonly count: readonly number[];
  /** The most amps that can flow out of a node, without going back through a contact (-1 for none): see `makeReachable`. */
  readonly amps: (node: number, past: number) => number;
  /** The node of a part's terminal. */
  readonly node: (part: string, terminal: string) => number;
}

export function viewWiring(system: System, given: readonly Wire[]): WiringView {
  const wires = distinctWires(given);
  const joints = wireJoints(system, wires);
  const outs = system.supplies.map(({ out }) => out);
  const joined = (nodes: readonly number[]) => {
    const reached = nodes.map((node) => joinedTo(joints, node));
    return reached.length === 1 ? reached[0]! : system.nodes.map((_, n) => reached.some((set) => set[n]));
  };
  let reach: ReturnType<typeof makeReachable> | undefined;
  return {
    system,
    wires,
    line: joined(outs.map(({ line }) => line)),
    neutral: joined(outs.map(({ neutral }) => neutral)),
    earth: joined(outs.map(({ earth }) => earth)),
    count: joints.slice(0, system.terminals).map((nodes) => nodes.length),
    amps(node, past) {
      reach ??= makeReachable(system, wires);
      return reach(node, past);
    },
    node: (part, terminal) => system.nodeOf.get(`${part}/${terminal}`)!,
  };
}

/** A node joined by wires alone to neither pole nor earth of the supply. */
export const nameOf = ({ system }: WiringView, node: number): string => {
  const part = system.parts[system.partOfNode[node]!]!;
  return `${part.name} ${system.nodes[node]!.slice(part.id.length + 1)}`;
};
