import type { Found } from '../../engine/grade/verdict.ts';
import { partOf, type System } from '../../engine/model/system.ts';
import { list } from '../../engine/rules/words.ts';

/** Help with a finding in three levels: where to look, which function is broken, what to compare. */
export function helpOf(system: System, found: Found): readonly [string, string, string] {
  const parts = found.terminals.map((terminal) => partOf(system, system.nodeOf.get(terminal)!));
  const names = [
    ...new Set(parts.filter(({ kind }) => kind.kind !== 'strip').map(({ name }) => name.toLowerCase())),
  ];
  // A long path is looked at from its end: that is where it should not have come, or not have stopped.
  const where = names.length > 3 ? names.slice(-3) : names;
  return [
    where.length > 0 ? `Look at the leads of the ${list(where)}.` : 'Look at the strip.',
    found.function,
    found.compare,
  ];
}
