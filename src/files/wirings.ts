import type { z } from 'zod/mini';
import type { System } from '../engine/model/system.ts';
import { wireKey } from '../engine/model/wiring.ts';
import { allRules } from '../engine/rules/index.ts';
import { checkTerminal, checkWires } from './attempt.ts';
import { FileError, show } from './error.ts';
import { expandLanding, type Landing } from './names.ts';
import { placeAt } from './place.ts';
import { oneOf } from './suggest.ts';
import type { systemSchema } from './system-schema.ts';

type Raw = z.infer<typeof systemSchema>;

/**
 * Checks that every wire of a landing map joins two different terminals of the system, and stands there once.
 * @throws FileError with the first that does not
 */
export function checkLanding(
  system: System,
  landing: Landing,
  file: string,
  path: readonly PropertyKey[],
): void {
  const seen = new Set<string>();
  for (const [at, leads] of Object.entries(landing)) {
    checkTerminal(system, at, file, [...path, at]);
    leads.forEach((lead, k) => {
      const place = [...path, at, k];
      checkTerminal(system, lead, file, place);
      const key = wireKey([lead, at]);
      if (lead !== at && !seen.has(key)) {
        seen.add(key);
        return;
      }
      const expected = lead === at ? 'a wire between two different terminals' : 'every wire once';
      throw new FileError({ file, place: placeAt(place), expected, found: show(lead) });
    });
  }
}

/**
 * Checks the wirings of a system file: their ids, terminals, rules, and that a mistake lifts only wires that are there.
 * @throws FileError with the first place that does not fit
 */
export function checkReferences(
  system: System,
  references: Raw['references'],
  mistakes: Raw['mistakes'],
  file: string,
): void {
  const fail = (path: readonly PropertyKey[], expected: string, found: string) => {
    throw new FileError({ file, place: placeAt(path), expected, found });
  };
  const ids = new Set<string>();
  const once = (id: string, path: readonly PropertyKey[]) => {
    if (ids.has(id)) fail(path, 'an id that no other wiring has', show(id));
    ids.add(id);
  };

  const wiresOf = new Map<string, Set<string>>();
  references.forEach(({ id, wires }, k) => {
    once(id, ['references', k, 'id']);
    checkLanding(system, wires, file, ['references', k, 'wires']);
    wiresOf.set(id, new Set(expandLanding(wires).map(wireKey)));
  });

  const advice = allRules.filter(({ severity }) => severity === 'advice').map(({ id }) => id);
  const graver = allRules.filter(({ severity }) => severity !== 'advice').map(({ id }) => id);
  mistakes.forEach(({ id, from, lift, land, breaks, advises }, k) => {
    const at = ['mistakes', k];
    once(id, [...at, 'id']);
    const wires = wiresOf.get(from);
    checkWires(system, lift, file, [...at, 'lift']);
    checkWires(system, land, file, [...at, 'land']);
    if (!wires) fail([...at, 'from'], oneOf(from, wiresOf.keys()), show(from));
    const left = new Set(wires);
    lift.forEach((wire, n) => {
      if (!left.delete(wireKey(wire)))
        fail([...at, 'lift', n], `a wire of reference ${from}, once`, show(wire.join(' ')));
    });
    land.forEach((wire, n) => {
      if (left.has(wireKey(wire)))
        fail([...at, 'land', n], 'a wire that is not there yet', show(wire.join(' ')));
      left.add(wireKey(wire));
    });
    breaks.forEach((rule, n) => {
      if (!graver.includes(rule)) fail([...at, 'breaks', n], oneOf(rule, graver), show(rule));
    });
    advises.forEach((rule, n) => {
      if (!advice.includes(rule)) fail([...at, 'advises', n], oneOf(rule, advice), show(rule));
    });
  });
}
