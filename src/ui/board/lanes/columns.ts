import { type Run, sideBySide, type Tap } from './run.ts';
import { CLEARANCE, type Pin, type StripTerminal } from './shape.ts';
import { GIVE, placeSlots } from './slots.ts';

function groupTaps(runs: Run[], edge: Tap['edge']): Map<string, { run: Run; tap: Tap }[]> {
  const groups = new Map<string, { run: Run; tap: Tap }[]>();
  for (const run of runs) {
    for (const tap of run.taps) {
      if (tap.edge !== edge || tap.id === '') continue;
      const group = groups.get(tap.id);
      if (group) group.push({ run, tap });
      else groups.set(tap.id, [{ run, tap }]);
    }
  }
  return groups;
}

function inOrder(group: { run: Run; tap: Tap }[]): { run: Run; tap: Tap }[] {
  const tapOf = new Map(group.map(({ run, tap }) => [run, tap]));
  const at = (run: Run): Tap => tapOf.get(run) as Tap;
  return sideBySide(
    group.map(({ run }) => run),
    at,
  ).map((run) => ({ run, tap: at(run) }));
}

/**
 * Spreads the wires that share a lead side by side around its centre (sets `tap.x`).
 * They stay clear of the neighbouring leads' wires; six to a lead keep their distance.
 */
export function fanLeads(runs: Run[], pins: Pin[], slot: number): void {
  const xs = pins.map((pin) => pin.x).sort((a, b) => a - b);
  for (const group of groupTaps(runs, 'lead').values()) {
    const count = group.length;
    const home = group[0]?.tap.home ?? 0;
    const room = Math.min(...xs.filter((x) => x !== home).map((x) => Math.abs(x - home)));
    // The last wires but one leave the lead's own 8 px at most, so only the outermost stand clear.
    const step = Math.min(slot, (room - CLEARANCE) / (count - 1), 16 / Math.max(1, count - 3));
    inOrder(group).forEach(({ tap }, i) => {
      tap.x = count === 1 ? home : home + (i - (count - 1) / 2) * step;
    });
  }
}

/**
 * Gives every wire at a terminal its own slot inside the box (sets `tap.x`),
 * away from other wires' lead columns where it can, straight below its own lead where that fits.
 */
export function chooseSlots(runs: Run[], strip: StripTerminal[], slot: number): void {
  const leads = runs.flatMap((run) =>
    run.taps.filter((tap) => tap.edge === 'lead').map((tap) => ({ key: run.key, x: tap.x })),
  );
  const groups = groupTaps(runs, 'strip');
  for (const box of strip) {
    const group = groups.get(box.id);
    if (!group) continue;
    const ordered = inOrder(group);
    const reach = box.width / 2 + CLEARANCE;
    const near = leads.filter((lead) => Math.abs(lead.x - box.x) < reach);
    const keys = ordered.map(({ run }) => run.key);
    placeSlots(box, keys, near, slot).forEach((x, i) => {
      (ordered[i] as { tap: Tap }).tap.x = x;
    });
  }
}

/** Lets a lead's only wire leave a little off centre where that makes it straight (sets `tap.x`). */
export function straighten(runs: Run[]): void {
  const leads = groupTaps(runs, 'lead');
  const taps = runs.flatMap((run) => run.taps);
  for (const { taps: pair } of runs) {
    const lead = pair.find(({ edge }) => edge === 'lead');
    const slot = pair.find(({ edge, id }) => edge === 'strip' && id !== '');
    if (!lead || !slot || leads.get(lead.id)?.length !== 1) continue;
    const off = Math.abs(lead.x - slot.x);
    if (off === 0 || off > GIVE) continue;
    const clear = taps.every((tap) => tap === lead || tap === slot || Math.abs(tap.x - slot.x) >= CLEARANCE);
    if (clear) lead.x = slot.x;
  }
}
