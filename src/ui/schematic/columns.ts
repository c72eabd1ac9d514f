import type { Edge, Graph } from './graph.ts';

/**
 * Where nets and symbols stand from left to right. Uprights of nets stand in channels, symbols in the cells between
 * two channels: cell k lies between the channels k and k + 1.
 */
export interface Columns {
  /** Channel of each net, by net; -1 for a net that no contact or load meets. */
  readonly channel: readonly number[];
  /** Cell of each edge. */
  readonly cell: readonly number[];
  readonly channels: number;
}

/** Each net one channel after the last that leads to it; loads to neutral in one cell, neutral on the right. */
export function columnsOf({ nodes, edges, order, neutrals, poles, fed, bare }: Graph): Columns {
  const channel = nodes.map(() => -1);
  const isRight = (net: number) => neutrals.has(net) || poles.has(net);
  for (const net of order) {
    if (isRight(net)) continue;
    const before = edges.filter(({ from, to }) => to === net && from !== net);
    channel[net] = before.reduce((most, { from }) => Math.max(most, channel[from]! + 1), 0);
  }
  const last = Math.max(0, ...channel.filter((_, net) => !bare.has(net)));
  for (const net of order) if (isRight(net)) channel[net] = last + (neutrals.has(net) ? 1 : 2);
  // What no line feeds stands as near as it can to what it leads to.
  for (const net of [...order].reverse()) {
    if (isRight(net) || fed.has(net) || bare.has(net)) continue;
    const after = edges.filter(({ from, to }) => from === net && to !== net && !bare.has(to));
    if (after.length > 0) channel[net] = Math.min(...after.map(({ to }) => channel[to]!)) - 1;
  }
  const cellOf = ({ from, to }: Edge): number => (channel[to]! === last + 1 ? last : channel[from]!);
  return { channel, cell: edges.map(cellOf), channels: last + 3 };
}
