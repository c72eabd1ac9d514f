import type { PartKind } from '../../engine/model/part.ts';
import { isValve } from './system-words.ts';

const names = ['Supply and joints', 'Controls', 'Valves', 'What fires and runs', 'Pipework'] as const;

/** Which group of the parts page a kind belongs to, from what it has rather than from its name. */
function groupOf(kind: PartKind): (typeof names)[number] {
  const { supply, terminals, ports, work } = kind;
  if (supply || terminals.some(({ duty }) => duty === 'joint')) return 'Supply and joints';
  if (isValve(kind)) return 'Valves';
  if (work) return 'What fires and runs';
  return ports && terminals.length === 0 ? 'Pipework' : 'Controls';
}

/** Pages of kinds by group; groups that nothing belongs to are left out. */
export const groupParts = <T extends { readonly kind: PartKind }>(
  pages: readonly T[],
): { name: string; pages: T[] }[] =>
  names
    .map((name) => ({ name, pages: pages.filter(({ kind }) => groupOf(kind) === name) }))
    .filter(({ pages: found }) => found.length > 0);
