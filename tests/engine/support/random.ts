import fc from 'fast-check';
import type { System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { must } from './must.ts';

/** The same wirings on every run. */
export const seed = 20260;

const wire = (system: System): fc.Arbitrary<Wire> =>
  fc
    .tuple(fc.nat(system.terminals - 1), fc.nat(system.terminals - 2))
    .map(([a, b]): Wire => [must(system.nodes[a]), must(system.nodes[b < a ? b : b + 1])]);

/** Wires between any terminals at all, or a right wiring with up to four wires lost and up to four added. */
export const wirings = (system: System, right: readonly (readonly Wire[])[]): fc.Arbitrary<Wire[]> =>
  fc.oneof(
    fc.array(wire(system), { maxLength: 60 }),
    fc
      .tuple(
        fc.constantFrom(...right),
        fc.array(fc.nat(999), { maxLength: 4 }),
        fc.array(wire(system), { maxLength: 4 }),
      )
      .map(([wires, lost, added]) => {
        const gone = new Set(lost.map((k) => k % wires.length));
        return [...wires.filter((_, k) => !gone.has(k)), ...added];
      }),
  );
