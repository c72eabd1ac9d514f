import { CLEARANCE, type StripTerminal } from './shape.ts';

interface Column {
  key: string;
  x: number;
}

/** How far slots stay inside their box, px. */
const INSET = 5;

/** How far a wire may leave a lead off its centre and still look straight, px. */
export const GIVE = 4;

/** What a slot at `x` costs: a clash with another wire's lead column, a tiny jog, an odd place. */
function slotCost(x: number, key: string, wanted: number, leads: Column[]): number {
  let cost = Math.abs(x - wanted) * 0.3;
  for (const lead of leads) {
    const gap = Math.abs(lead.x - x);
    if (lead.key === key) cost += gap === 0 ? -40 : gap <= GIVE ? -36 : gap < 9 ? 6 : 0;
    else if (gap < CLEARANCE) cost += 100;
    else if (gap < CLEARANCE + 2) cost += 2;
  }
  return cost;
}

/** Cheapest places for `keys`, left to right and at least `step` apart; undefined if none fit. */
function cheapest(
  box: StripTerminal,
  keys: string[],
  leads: Column[],
  places: number[],
  slot: number,
  step: number,
): { cost: number; xs: number[] } | undefined {
  let before = new Float64Array(places.length);
  const from: Int32Array[] = [];
  keys.forEach((key, k) => {
    const wanted = box.x + (k - (keys.length - 1) / 2) * slot;
    const now = new Float64Array(places.length).fill(Infinity);
    const back = new Int32Array(places.length).fill(-1);
    let best = -1;
    let next = 0;
    places.forEach((x, i) => {
      while (k > 0 && (places[next] as number) <= x - step + 1e-9) {
        if (best < 0 || (before[next] as number) < (before[best] as number)) best = next;
        next++;
      }
      if (k > 0 && best < 0) return;
      now[i] = slotCost(x, key, wanted, leads) + (k > 0 ? (before[best] as number) : 0);
      back[i] = best;
    });
    before = now;
    from.push(back);
  });
  let at = before.indexOf(Math.min(...before));
  const cost = before[at] as number;
  if (!Number.isFinite(cost)) return undefined;
  const xs: number[] = [];
  for (let k = keys.length - 1; k >= 0; k--) {
    xs.unshift(places[at] as number);
    at = (from[k] as Int32Array)[at] as number;
  }
  return { cost, xs };
}

/**
 * Places wires (keys, left to right) inside a terminal's box. `leads` are the lead columns nearby.
 * Keeps `slot` px between them, or 5 px where that avoids a clash; a box too full for 5 px
 * shares its width evenly. Returns one x for each key.
 */
export function placeSlots(box: StripTerminal, keys: string[], leads: Column[], slot: number): number[] {
  const lo = box.x - box.width / 2 + INSET;
  const hi = box.x + box.width / 2 - INSET;
  const own = leads.filter(({ key, x }) => keys.includes(key) && x >= lo && x <= hi);
  const grid = Array.from({ length: Math.floor(hi - lo) + 1 }, (_, i) => lo + i);
  const places = [...new Set([...grid, ...own.map(({ x }) => x)])].sort((a, b) => a - b);
  const roomy = cheapest(box, keys, leads, places, slot, slot);
  if (roomy && roomy.cost < 90) return roomy.xs;
  const tight = cheapest(box, keys, leads, places, slot, CLEARANCE);
  if (roomy && tight) return tight.cost < roomy.cost - 50 ? tight.xs : roomy.xs;
  if (tight) return tight.xs;
  return keys.map((_, i) => lo + ((hi - lo) * i) / (keys.length - 1));
}
