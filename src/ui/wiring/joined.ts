import { type Wire, wireKey } from '../../engine/model/wiring.ts';

/** Terminals and wire keys joined to a terminal, or to a wire by its key, through wires alone. */
export function joinedThrough(wires: readonly Wire[], lit: string | undefined): ReadonlySet<string> {
  const joined = new Set<string>();
  if (lit === undefined) return joined;
  const start = wires.find((wire) => wireKey(wire) === lit);
  joined.add(start ? start[0] : lit);
  for (const terminal of joined) {
    for (const wire of wires) {
      if (!wire.includes(terminal)) continue;
      joined.add(wireKey(wire));
      // The set grows while it is walked, so every terminal reached is looked at in turn.
      for (const end of wire) joined.add(end);
    }
  }
  return joined;
}
