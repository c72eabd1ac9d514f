import type { Core } from '../../engine/model/part.ts';
import { partOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';

/** The core at a terminal of a part; undefined for a joint, which has none of its own. */
export function coreAt(system: System, terminal: string): Core | undefined {
  const node = system.nodeOf.get(terminal)!;
  const part = partOf(system, node);
  const found = part.kind.terminals.find(({ id }) => terminal === `${part.id}/${id}`);
  return found?.duty === 'joint' ? undefined : found?.core;
}

/** The colour a wire is drawn in: its lead's own core, or for a link what it carries by wires alone. */
export function coreOf(
  system: System,
  wire: Wire,
  permanent: { readonly neutral: readonly boolean[]; readonly earth: readonly boolean[] },
): Core {
  const own = coreAt(system, wire[0]) ?? coreAt(system, wire[1]);
  if (own) return own;
  const node = system.nodeOf.get(wire[0])!;
  if (permanent.earth[node]) return 'green-yellow';
  return permanent.neutral[node] ? 'blue' : 'brown';
}

/** Letter codes of cores for small tags and black-and-white print (IEC 60757). */
export const coreCode: Record<Core, string> = {
  brown: 'BN',
  blue: 'BU',
  'green-yellow': 'GNYE',
  black: 'BK',
  grey: 'GY',
  white: 'WH',
  orange: 'OG',
};
