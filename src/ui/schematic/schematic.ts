import type { Core } from '../../engine/model/part.ts';
import type { System } from '../../engine/model/system.ts';
import { canonicalWires, type Wire } from '../../engine/model/wiring.ts';
import { coreAt, coreCode } from '../wiring/cores.ts';
import { markOf } from '../wiring/names.ts';
import { columnsOf } from './columns.ts';
import { type Edge, type Graph, readGraph } from './graph.ts';
import { lanesOf } from './lanes.ts';
import { type Box, type Label, sizes, textWidth, wrap } from './measure.ts';
import { rowsOf, spansOf } from './rows.ts';
import { badgeOf, notesOf, symbolName } from './words.ts';

/** A straight piece of conductor. */
export interface Run {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  /** The core it is drawn in; left out for what the strip joins and for joints inside a part. */
  readonly core?: Core;
  readonly inside: boolean;
  /** Where it passes under an upright, by x. */
  readonly gaps: readonly number[];
}

/** Everything joined by wires alone, drawn as one upright with a row to each contact and load. */
export interface NetDrawing {
  readonly net: number;
  /** Nodes of the system that it joins. */
  readonly nodes: readonly number[];
  readonly runs: readonly Run[];
  readonly dots: readonly (readonly [x: number, y: number])[];
  readonly badge?: { readonly label: Label; readonly box: Box };
  readonly labels: readonly Label[];
}

/** A contact or a load in its row. */
export interface SymbolDrawing extends Edge {
  readonly x: number;
  readonly y: number;
  readonly box: Box;
  readonly name: Label;
  /** The circles at its ends: the terminals, by node. */
  readonly ends: readonly { readonly node: number; readonly x: number; readonly label: Label }[];
  /** A current passes one way only: the half wave of a motor. */
  readonly diode: boolean;
}

/** A whole schematic. Lengths in drawing units, 1 px on the screen at full size. */
export interface Schematic {
  readonly width: number;
  readonly height: number;
  readonly nets: readonly NetDrawing[];
  readonly symbols: readonly SymbolDrawing[];
  /** Nets told in words below the rows. */
  readonly notes: readonly { readonly net: number; readonly labels: readonly Label[] }[];
  /** Where a row passes under an upright. */
  readonly crossings: number;
  readonly graph: Graph;
}

/** From a row to the next; above the first; half a symbol with its circles; room between a mark and the cell's edge. */
const ROW = 46;
const TOP = 36;
const HALF = 24;
const PAD = 7;
const LEAST_LANE = 20;
const NOTE = 18;

interface Ends {
  readonly mark: string;
  readonly code: string;
}

function endsOf(system: System, node: number): Ends {
  if (node >= system.terminals) return { mark: '', code: '' };
  const name = system.nodes[node]!;
  const core = coreAt(system, name);
  return { mark: markOf(name), code: core ? coreCode[core] : '' };
}

/** Lays a wired system out by current path: line on the left, neutral on the right, a row to each path between. */
export function drawSchematic(system: System, wires: readonly Wire[]): Schematic {
  const graph = readGraph(system, canonicalWires(wires));
  const { edges, order, bare } = graph;
  const columns = columnsOf(graph);
  const { row, count } = rowsOf(graph, columns);
  const lanes = lanesOf(graph, columns, row);
  const spans = spansOf(graph, row);
  const badges = new Map(order.map((net) => [net, badgeOf(system, graph, net)]));
  const names = edges.map((edge) => symbolName(system, edge));
  const marks = edges.map(({ a, b }) => [endsOf(system, a), endsOf(system, b)] as const);
  const y = (edge: number): number => TOP + row[edge]! * ROW;

  const half = (k: number): number => {
    const beside = marks[k]!.map(({ mark, code }) =>
      Math.max(textWidth(mark, 'mark'), textWidth(code, 'code')),
    );
    return Math.max(HALF + Math.max(...beside) + PAD, textWidth(names[k]!, 'name') / 2 + PAD);
  };
  const laneX = new Map<number, number>();
  const cellX: number[] = [];
  let x = 0;
  lanes.forEach((channel, c) => {
    x += 4;
    for (const nets of channel) {
      const wide = Math.max(LEAST_LANE, ...nets.map((net) => textWidth(badges.get(net)!, 'badge') + 14));
      for (const net of nets) laneX.set(net, x + wide / 2);
      x += wide;
    }
    x += 4;
    const here = edges.flatMap((_, k) => (columns.cell[k] === c ? [half(k)] : []));
    if (here.length === 0) return;
    cellX[c] = x + Math.max(...here);
    x += 2 * Math.max(...here);
  });
  const width = x;

  const uprights = order.flatMap((net) => {
    const [first, last] = spans[net]!;
    return bare.has(net) || first === last ? [] : [{ net, x: laneX.get(net)!, first, last }];
  });
  let crossings = 0;
  const level = (k: number, net: number, node: number, x1: number, x2: number): Run => {
    const gaps = uprights
      .filter((up) => up.net !== net && up.x > x1 && up.x < x2 && up.first < row[k]! && row[k]! < up.last)
      .map((up) => up.x)
      .sort((p, q) => p - q);
    crossings += gaps.length;
    const inside = graph.nodes[net]?.length === 1 || node >= system.terminals;
    const core = inside ? undefined : coreAt(system, system.nodes[node]!);
    return { from: [x1, y(k)], to: [x2, y(k)], inside, gaps, ...(core && { core }) };
  };

  const nets = order
    .filter((net) => !bare.has(net))
    .map((net): NetDrawing => {
      const at = laneX.get(net)!;
      const runs: Run[] = [];
      const labels: Label[] = [];
      const sides = new Map<number, number>();
      edges.forEach(({ from, to, a, b }, k) => {
        const middle = cellX[columns.cell[k]!]!;
        if (from === net) {
          runs.push(level(k, net, a, at, middle - HALF));
          sides.set(row[k]!, (sides.get(row[k]!) ?? 0) + 1);
        }
        if (to === net && from === net) {
          runs.push(level(k, net, b, middle + HALF, middle + HALF + 12));
          const text = `= ${badges.get(net) || marks[k]![0].mark}`;
          labels.push({ text, x: middle + HALF + 2, y: y(k) + 12, anchor: 'start', tone: 'code' });
        } else if (to === net) {
          runs.push(level(k, net, b, middle + HALF, at));
          sides.set(row[k]!, (sides.get(row[k]!) ?? 0) + 1);
        }
      });
      const [first, last] = spans[net]!;
      const inside = graph.nodes[net]!.every((node) => node >= system.terminals);
      const top = TOP + first * ROW;
      if (first < last) runs.push({ from: [at, top], to: [at, TOP + last * ROW], inside, gaps: [] });
      const dots = [...sides].flatMap(([r, ways]): [number, number][] => {
        const joined = ways + (r > first ? 1 : 0) + (r < last ? 1 : 0);
        return joined > 2 ? [[at, TOP + r * ROW]] : [];
      });
      const text = badges.get(net)!;
      const common = { net, nodes: graph.nodes[net]!, runs, dots, labels };
      if (text === '') return common;
      const wide = textWidth(text, 'badge') / 2 + 5;
      const box = { left: at - wide, right: at + wide, top: top - 27, bottom: top - 9 };
      runs.push({ from: [at, top - 9], to: [at, top], inside, gaps: [] });
      const label: Label = { text, x: at, y: top - 13.8, anchor: 'middle', tone: 'badge' };
      return { ...common, badge: { label, box } };
    });

  const symbols = edges.map((edge, k): SymbolDrawing => {
    const middle = cellX[columns.cell[k]!]!;
    const load = edge.what === 'load';
    const sides = [edge.a, edge.b].map((node, side) => ({ node, x: middle + (side ? HALF : -HALF), side }));
    return {
      ...edge,
      x: middle,
      y: y(k),
      box: {
        left: middle - HALF - 3,
        right: middle + HALF + 3,
        top: y(k) - 11,
        bottom: y(k) + (load ? 11 : 4),
      },
      name: { text: names[k]!, x: middle, y: y(k) - 17, anchor: 'middle', tone: 'name' },
      ends: sides
        .filter(({ node }) => node < system.terminals)
        .map(({ node, x: at, side }) => {
          const { mark } = marks[k]![side]!;
          const label: Label = {
            text: mark,
            x: at + (side ? 5 : -5),
            y: y(k) - 5,
            anchor: side ? 'start' : 'end',
            tone: 'mark',
          };
          return { node, x: at, label };
        }),
      diode: load && system.loads[edge.index]!.spec.via !== undefined,
    };
  });
  symbols.forEach((symbol, k) => {
    symbol.ends.forEach(({ node, x: at }) => {
      const { code } = marks[k]![node === symbol.a ? 0 : 1]!;
      const net = nets.find((drawn) => drawn.net === graph.netOf(node));
      if (!net || code === '' || (symbol.from === symbol.to && at > symbol.x)) return;
      const right = at > symbol.x;
      (net.labels as Label[]).push({
        text: code,
        x: at + (right ? 5 : -5),
        y: symbol.y + 12,
        anchor: right ? 'start' : 'end',
        tone: 'code',
      });
    });
  });

  let bottom = TOP + Math.max(0, count - 1) * ROW + 34;
  const notes = notesOf(system, graph).map(({ net, text }) => ({
    net,
    labels: wrap(text, 'note', width - 36).map((line, k): Label => {
      bottom += k === 0 ? NOTE + 4 : NOTE;
      return { text: line, x: 26, y: bottom, anchor: 'start', tone: 'note' };
    }),
  }));
  return { width, height: bottom + sizes.note, nets, symbols, notes, crossings, graph };
}

/** A run as an SVG path, broken where it passes under an upright. */
export function pathOf({ from, to, gaps }: Run): string {
  const round = (value: number) => Math.round(value * 10) / 10;
  const breaks = gaps.map((x) => `H${round(x - 4)}M${round(x + 4)} ${round(from[1])}`).join('');
  return `M${round(from[0])} ${round(from[1])}${breaks}${from[1] === to[1] ? `H${round(to[0])}` : `V${round(to[1])}`}`;
}
