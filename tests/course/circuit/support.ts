import type { Config, System } from '../../../src/engine/model/system.ts';
import { partState } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';

/**
 * How many wires and closed contacts lie between a node and every other that is joined to it: a search of its own, one
 * ring after the other, which shares nothing with the engine but the parts' contacts.
 */
export function stepsFrom(
  system: System,
  wires: readonly Wire[],
  config: Config,
  start: number,
): ReadonlyMap<number, number> {
  const pairs = wires.map(([a, b]) => [system.nodes.indexOf(a), system.nodes.indexOf(b)] as const);
  for (const { a, b, part, spec } of system.contacts) {
    const owner = system.parts[part];
    if (owner && spec.closed(partState(system, owner, config))) pairs.push([a, b]);
  }
  const steps = new Map([[start, 0]]);
  for (let ring = [start]; ring.length > 0; ) {
    const next: number[] = [];
    for (const [a, b] of [...pairs, ...pairs.map(([a, b]) => [b, a] as const)])
      if (ring.includes(a) && !steps.has(b)) {
        steps.set(b, (steps.get(a) ?? 0) + 1);
        next.push(b);
      }
    ring = next;
  }
  return steps;
}
