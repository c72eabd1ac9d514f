import { drivesOf, type PartKind } from '../../engine/model/part.ts';

/** What is drawn inside a part: contacts that make and break, motors, diodes, each on a row between two nodes. */
export interface Glyph {
  readonly what: 'contact' | 'motor' | 'coil' | 'diode';
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly x1: number;
  readonly x2: number;
  readonly row: number;
}

export interface Face {
  readonly glyphs: readonly Glyph[];
  /** Uprights that join a node to its rows: from the lead for a terminal, between rows for an inner node. */
  readonly stems: readonly {
    readonly node: string;
    readonly x: number;
    readonly rows: readonly [number, number];
  }[];
  readonly rows: number;
}

/** Whether its mechanism stands in the water: a valve or a pump, and not a relay or a boiler's timer. */
export const movesWater = ({ ports, heat }: PartKind): boolean => ports !== undefined && heat !== 'gives';

/** Lays out the inside of a part from its data, given where its leads are. Rows count away from the leads. */
export function layFace(kind: PartKind, xOf: (terminal: string) => number): Face {
  const xs = new Map(kind.terminals.map(({ id }) => [id, xOf(id)]));
  const ids = kind.terminals.map(({ id }) => id);
  (kind.inner ?? []).forEach((inner, k) => {
    const right = ids.length - 2 - k;
    const pole = kind.supply && (kind.contacts ?? []).find(({ between }) => between.includes(inner));
    const outer = pole?.between.find((node) => node !== inner);
    if (outer !== undefined) xs.set(inner, xs.get(outer)!);
    else xs.set(inner, (xs.get(ids[right - 1] ?? ids[0]!)! + xs.get(ids[right] ?? ids[0]!)!) / 2);
  });
  const driving = kind.motion ? drivesOf(kind.motion) : [];
  const raw = [
    ...(kind.contacts ?? []).map(({ id, between }) => ({ what: 'contact' as const, id, between })),
    // Of the loads only those that move something are drawn: what they move is what a learner looks for.
    ...(kind.loads ?? [])
      .filter(({ id, ownLoop }) => !ownLoop && (driving.includes(id) || kind.work?.does === 'pumps'))
      .map(({ id, between }) => ({
        what: id === 'motor' ? ('motor' as const) : ('coil' as const),
        id,
        between,
      })),
    ...(kind.elements ?? [])
      .filter(({ diode }) => diode)
      .map(({ id, between }) => ({ what: 'diode' as const, id, between })),
  ].map(({ what, id, between: [from, to] }) => {
    const [a, b] = [xs.get(from)!, xs.get(to)!];
    return { what, id, from, to, x1: a, x2: b, left: Math.min(a, b), right: Math.max(a, b) };
  });
  // Short and inner ones lie nearest the leads, so that few uprights cross a row.
  raw.sort((p, q) => q.left - p.left || p.right - q.right || (p.id < q.id ? -1 : 1));
  const rows: { left: number; right: number; nodes: string[] }[][] = [];
  const glyphs: Glyph[] = raw.map((item) => {
    const nodes = [item.from, item.to];
    const fits = (row: (typeof rows)[number]) =>
      row.every(
        (other) =>
          item.left > other.right + 8 ||
          item.right < other.left - 8 ||
          (other.nodes.some((node) => nodes.includes(node)) &&
            (item.left >= other.right || item.right <= other.left)),
      );
    let row = item.x1 === item.x2 ? 0 : rows.findIndex(fits);
    if (row < 0) row = rows.length;
    rows[row] = [...(rows[row] ?? []), { left: item.left, right: item.right, nodes }];
    return { what: item.what, id: item.id, from: item.from, to: item.to, x1: item.x1, x2: item.x2, row };
  });
  const stems = [...xs].flatMap(([node, x]) => {
    const at = glyphs.filter((g) => (g.from === node || g.to === node) && g.x1 !== g.x2).map((g) => g.row);
    if (at.length === 0) return [];
    const lead = ids.includes(node);
    const span: [number, number] = [lead ? -1 : Math.min(...at), Math.max(...at)];
    return lead || span[0] !== span[1] ? [{ node, x, rows: span }] : [];
  });
  return { glyphs, stems, rows: rows.length };
}
