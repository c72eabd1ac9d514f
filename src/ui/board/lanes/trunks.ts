import { isStraight, type Run, type Trunk } from './run.ts';
import { CLEARANCE } from './shape.ts';

/** The horizontal stretch of each run that needs a lane. `snug` tells the shortest links. */
export function makeTrunks(runs: Run[], snug: (run: Run) => boolean): Trunk[] {
  return runs
    .filter((run) => !isStraight(run))
    .map((run) => {
      const [a, b] = run.taps;
      const columns = (edge: string): number[] =>
        run.taps.filter((tap) => tap.edge === edge).map((tap) => tap.x);
      return {
        key: run.key,
        lo: Math.min(a.x, b.x),
        hi: Math.max(a.x, b.x),
        ups: columns('lead'),
        downs: columns('strip'),
        snug: snug(run),
        part: 'whole',
      };
    });
}

const near = (a: number[], b: number[]): boolean => a.some((x) => b.some((y) => Math.abs(x - y) < CLEARANCE));

/** True where `a` must lie nearer the leads than `b`, or their columns would run together. */
export function mustLieAbove(a: Trunk, b: Trunk): boolean {
  if (a.key === b.key) return a.part === 'first' && b.part === 'second';
  return near(a.ups, b.downs) || (b.snug && !a.snug);
}

/** The trunks caught in a circle of "must lie above", by index. */
function caught(trunks: Trunk[]): number[] {
  const all = trunks.map((_, i) => i);
  const above = trunks.map((a) => all.filter((j) => mustLieAbove(a, trunks[j] as Trunk)));
  let left = new Set(all);
  for (;;) {
    const held = new Set([...left].flatMap((i) => above[i] as number[]).filter((j) => left.has(j)));
    const kept = [...held].filter((i) => (above[i] as number[]).some((j) => left.has(j)));
    if (kept.length === left.size) return kept.sort((a, b) => a - b);
    left = new Set(kept);
  }
}

/** A column for a jog: clear of every other column if there is one, close to the middle of the run. */
function jogColumn(trunk: Trunk, taken: number[], left: number, right: number): number {
  const middle = (trunk.lo + trunk.hi) / 2;
  let best = middle;
  let least = Infinity;
  for (let x = Math.ceil(left); x <= right; x++) {
    const clash = taken.filter((other) => Math.abs(other - x) < CLEARANCE).length;
    const outside = Math.max(0, trunk.lo - x, x - trunk.hi);
    const cost = clash * 1e6 + outside * 10 + Math.abs(x - middle);
    if (cost < least) [best, least] = [x, cost];
  }
  return best;
}

/**
 * Breaks every circle of "must lie above" by running one of its wires in two lanes with a jog
 * between: its lead end then only has trunks below it and its strip end only trunks above.
 */
export function breakCircles(trunks: Trunk[], straights: number[], left: number, right: number): Trunk[] {
  let now = trunks;
  for (;;) {
    const pick = caught(now)
      .map((i) => now[i] as Trunk)
      .filter((trunk) => trunk.part === 'whole' && trunk.ups.length === 1)
      .sort((a, b) => b.hi - b.lo - (a.hi - a.lo))[0];
    if (!pick) return now;
    const taken = [...straights, ...now.flatMap((trunk) => [...trunk.ups, ...trunk.downs])];
    const jog = jogColumn(pick, taken, left, right);
    const up = pick.ups[0] as number;
    const down = pick.downs[0] as number;
    const half = (x: number): { lo: number; hi: number } => ({
      lo: Math.min(x, jog),
      hi: Math.max(x, jog),
    });
    now = [
      ...now.filter((trunk) => trunk !== pick),
      { ...pick, ...half(up), ups: [up], downs: [jog], part: 'first' },
      { ...pick, ...half(down), ups: [jog], downs: [down], part: 'second' },
    ];
  }
}
