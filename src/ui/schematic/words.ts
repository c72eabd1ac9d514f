import type { System } from '../../engine/model/system.ts';
import { markOf, tagOf } from '../wiring/names.ts';
import type { Edge, Graph } from './graph.ts';

/** What stands over a symbol: the part, and which of its contacts or loads this is. */
export function symbolName({ parts, contacts, loads }: System, { what, index, part }: Edge): string {
  const { short, kind } = parts[part]!;
  const { id } = (what === 'contact' ? contacts : loads)[index]!.spec;
  const alone = what === 'contact' && kind.contacts?.length === 1;
  const plain = id === 'contact' || id === 'element' || short.toLowerCase().includes(id.toLowerCase());
  return alone && plain ? short : `${short} ${id}`;
}

const isJoint = (system: System, node: number): boolean => {
  const { kind, id } = system.parts[system.partOfNode[node]!]!;
  return kind.terminals.find((terminal) => system.nodes[node] === `${id}/${terminal.id}`)?.duty === 'joint';
};

/** The strip terminals of a net, as written on the strip. */
export const waysOf = (system: System, { nodes }: Graph, net: number): string[] =>
  nodes[net]!.filter((node) => isJoint(system, node)).map((node) => markOf(system.nodes[node]!));

/** The leads of a net: its terminals without those of the strip and without nodes inside a part. */
export const leadsOf = (system: System, { nodes }: Graph, net: number): number[] =>
  nodes[net]!.filter((node) => node < system.terminals && !isJoint(system, node));

/** What is written at the head of a net: its strip terminals, or the pole that it is. */
export function badgeOf(system: System, graph: Graph, net: number): string {
  const poles = system.supplies.flatMap(({ line, neutral }) => [
    ...(graph.netOf(line) === net && line >= system.terminals ? ['Line'] : []),
    ...(graph.netOf(neutral) === net && neutral >= system.terminals ? ['Neutral'] : []),
  ]);
  return [...poles, ...waysOf(system, graph, net)].join(' · ');
}

/** What the rows cannot show: wires that only join (earth above all), and leads with nothing inside to draw. */
export function notesOf(system: System, graph: Graph): { readonly net: number; readonly text: string }[] {
  const drawn = new Set(graph.order);
  const ends = new Set(graph.edges.flatMap(({ a, b }) => [a, b]));
  const earths = new Set(system.supplies.map(({ out }) => graph.netOf(out.earth)));
  return graph.nodes.flatMap((nodes, net) => {
    const leads = leadsOf(system, graph, net).filter((node) => !ends.has(node));
    if (nodes.length < 2 || (drawn.has(net) && leads.length === 0)) return [];
    const ways = waysOf(system, graph, net);
    const where = ways.length > 0 ? `terminal${ways.length > 1 ? 's' : ''} ${ways.join(' and ')}` : 'a loop';
    const head = earths.has(net) ? `Earth, ${where}` : where.charAt(0).toUpperCase() + where.slice(1);
    const names = leads.map((node) => tagOf(system, system.nodes[node]!));
    return [{ net, text: `${head}: ${names.length > 0 ? names.join(', ') : 'joined to each other'}.` }];
  });
}
