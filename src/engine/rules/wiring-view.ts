import { joinedTo, wireJoints } from '../circuit/plain.ts';
import type { System } from '../model/system.ts';
import { distinctWires, type Wire } from '../model/wiring.ts';

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
  /** The node of a part's terminal. */
  readonly node: (part: string, terminal: string) => number;
}

export function viewWiring(system: System, given: readonly Wire[]): WiringView {
  const wires = distinctWires(given);
  const joints = wireJoints(system, wires);
  const { line, neutral, earth } = system.supply.out;
  return {
    system,
    wires,
    line: joinedTo(joints, line),
    neutral: joinedTo(joints, neutral),
    earth: joinedTo(joints, earth),
    count: joints.slice(0, system.terminals).map((nodes) => nodes.length),
    node: (part, terminal) => system.nodeOf.get(`${part}/${terminal}`)!,
  };
}

/** A node joined by wires alone to neither pole nor earth of the supply. */
export const nameOf = ({ system }: WiringView, node: number): string => {
  const part = system.parts[system.partOfNode[node]!]!;
  return `${part.name} ${system.nodes[node]!.slice(part.id.length + 1)}`;
};
