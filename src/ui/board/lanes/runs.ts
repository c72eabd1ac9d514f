import { byText, type Run, type Tap } from './run.ts';
import { type BoardShape, CLEARANCE, type Wire } from './shape.ts';

type Place = { where: 'upper' | 'lower' | 'strip'; id: string; x: number };

export interface Runs {
  upper: Run[];
  lower: Run[];
}

function findPlaces(shape: BoardShape): Map<string, Place> {
  const places = new Map<string, Place>();
  for (const where of ['upper', 'lower', 'strip'] as const) {
    for (const { id, x } of shape[where]) places.set(id, { where, id, x });
  }
  return places;
}

const tapAt = ({ where, id, x }: Place): Tap => ({
  edge: where === 'strip' ? 'strip' : 'lead',
  id,
  home: x,
  x,
});

/** Columns for wires that pass the strip: `count` of them, the one nearest the strip first. */
function marginColumns(count: number, strip: number, limit: number, pitch: number): number[] {
  const away = Math.sign(limit - strip);
  const room = Math.abs(limit - strip);
  const step = count > 1 ? Math.min(pitch, Math.max(0, room - CLEARANCE) / (count - 1)) : 0;
  const first = Math.max(0, (room - step * (count - 1)) / 2);
  return Array.from({ length: count }, (_, i) => strip + away * (first + i * step));
}

interface Pass {
  key: string;
  ends: [Place, Place];
  /** Sum of the two ends' x. */
  reach: number;
}

/** Sends wires from upper to lower leads round the nearer end of the strip, as far as room allows. */
function passStrip(passes: Pass[], shape: BoardShape): Map<string, number> {
  const frame = shape.frame ?? 6;
  const stripLeft = Math.min(...shape.strip.map(({ x, width }) => x - width / 2)) - frame;
  const stripRight = Math.max(...shape.strip.map(({ x, width }) => x + width / 2)) + frame;
  const sorted = [...passes].sort((a, b) => a.reach - b.reach || byText(a.key, b.key));
  const nearLeft = sorted.filter(({ reach }) => reach <= shape.left + shape.right).length;
  const fits = (room: number): number => Math.max(0, Math.floor(room / CLEARANCE));
  const most = fits(stripLeft - shape.left);
  const least = sorted.length - fits(shape.right - stripRight);
  const split = Math.max(0, Math.min(most, sorted.length, Math.max(nearLeft, least)));
  const columns = [
    ...marginColumns(split, stripLeft, shape.left, shape.lane).reverse(),
    ...marginColumns(sorted.length - split, stripRight, shape.right, shape.lane),
  ];
  return new Map(sorted.map(({ key }, i) => [key, columns[i] as number]));
}

/**
 * Shares wires out between the channels, each list sorted by wire key.
 * A link goes to the channel with fewer wires over its span; a wire from an upper to a lower lead
 * has a run in both. Throws RangeError for an unknown end or a wire with both ends in one place.
 */
export function shareOut(shape: BoardShape, wires: Wire[]): Runs {
  const places = findPlaces(shape);
  const runs: Runs = { upper: [], lower: [] };
  const links: Run[] = [];
  const passes: Pass[] = [];
  for (const { key, ends } of [...wires].sort((a, b) => byText(a.key, b.key))) {
    const [a, b] = ends.map((id) => places.get(id));
    if (!a || !b || a === b) throw new RangeError(`Wire ${key} cannot run ${ends.join(' to ')}.`);
    const run: Run = { key, taps: [tapAt(a), tapAt(b)] };
    const sides = new Set([a.where, b.where]);
    if (sides.has('upper') && sides.has('lower')) {
      passes.push({ key, ends: [a, b], reach: a.x + b.x });
    } else if (sides.has('upper')) runs.upper.push(run);
    else if (sides.has('lower')) runs.lower.push(run);
    else links.push(run);
  }
  const columns = passStrip(passes, shape);
  for (const { key, ends } of passes) {
    const x = columns.get(key) as number;
    for (const end of ends) {
      const margin: Tap = { edge: 'strip', id: '', home: x, x };
      runs[end.where as 'upper' | 'lower'].push({ key, taps: [tapAt(end), margin] });
    }
  }
  for (const link of links) {
    const span = link.taps.map(({ home }) => home);
    const crowd = (list: Run[]): number =>
      list.filter(
        ({ taps: [a, b] }) =>
          Math.max(a.home, b.home) >= Math.min(...span) && Math.min(a.home, b.home) <= Math.max(...span),
      ).length;
    (crowd(runs.lower) < crowd(runs.upper) ? runs.lower : runs.upper).push(link);
  }
  runs.upper.sort((a, b) => byText(a.key, b.key));
  runs.lower.sort((a, b) => byText(a.key, b.key));
  return runs;
}
