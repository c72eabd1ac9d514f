/** A wire joins two terminals, named `part/terminal`. It has no direction. */
export type Wire = readonly [string, string];

/** One name for a wire whichever way round it is written: the same wire twice is one wire. */
export const wireKey = ([a, b]: Wire): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** The wires by their keys, in the order they first appear. */
export function wiresByKey(wires: readonly Wire[]): Map<string, Wire> {
  const byKey = new Map<string, Wire>();
  for (const wire of wires) {
    const key = wireKey(wire);
    if (!byKey.has(key)) byKey.set(key, wire);
  }
  return byKey;
}

/** The wires once each, in the order they first appear. */
export const distinctWires = (wires: readonly Wire[]): Wire[] => [...wiresByKey(wires).values()];

/**
 * The wires once each, in an order and a way round that depend on nothing but the circuit: whatever is said about
 * them (a route of several equal ones, a list of terminals) is then the same for every way of writing it down.
 */
export function canonicalWires(wires: readonly Wire[]): Wire[] {
  const byKey = new Map(wires.map((wire) => [wireKey(wire), wire]));
  const keys = [...byKey.keys()].sort();
  return keys.map((key) => {
    const [a, b] = byKey.get(key)!;
    return a < b ? [a, b] : [b, a];
  });
}
