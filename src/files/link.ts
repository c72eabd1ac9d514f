import type { System } from '../engine/model/system.ts';
import { type Wire, wireKey } from '../engine/model/wiring.ts';

/**
 * A wiring as text short enough for a link: version, a check on the terminals' names, then two bytes a wire,
 * in base64url. A link made for other terminals is refused, not misread.
 */
const VERSION = 1;
const MOST_WIRES = 400;

/** 16-bit check (FNV-1a folded) on the names of all terminals, so that numbers mean the same at both ends. */
function checkOf(system: System): number {
  let hash = 0x811c9dc5;
  for (const name of system.nodes.slice(0, system.terminals)) {
    for (let k = 0; k <= name.length; k++) {
      hash = Math.imul(hash ^ (k < name.length ? name.charCodeAt(k) : 0), 0x01000193);
    }
  }
  return ((hash >>> 16) ^ hash) & 0xffff;
}

export function wiresToLink(system: System, wires: readonly Wire[]): string {
  const check = checkOf(system);
  const bytes = [VERSION, check >> 8, check & 0xff];
  for (const [a, b] of [...wires].sort((x, y) => (wireKey(x) < wireKey(y) ? -1 : 1))) {
    bytes.push(system.nodeOf.get(a)!, system.nodeOf.get(b)!);
  }
  return btoa(String.fromCharCode(...bytes))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');
}

/** The wires a link carries, or a sentence that says why it cannot be read. */
export function wiresFromLink(system: System, text: string): Wire[] | { readonly problem: string } {
  if (text.length > 4 * MOST_WIRES) return { problem: 'The link is too long to be a wiring.' };
  let bytes: number[];
  try {
    bytes = [...atob(text.replaceAll('-', '+').replaceAll('_', '/'))].map((letter) => letter.charCodeAt(0));
  } catch {
    return { problem: 'The link is damaged: copy it again, whole.' };
  }
  const [version, high, low, ...ends] = bytes;
  if (version !== VERSION) return { problem: 'The link was made by another version of this page.' };
  if (((high ?? 0) << 8) + (low ?? 0) !== checkOf(system))
    return { problem: 'The link belongs to another job.' };
  const wires: Wire[] = [];
  for (let k = 0; k < ends.length; k += 2) {
    const [a, b] = [ends[k], ends[k + 1]].map((end) => (end === undefined ? undefined : system.nodes[end]));
    const known = [ends[k], ends[k + 1]].every((end) => end !== undefined && end < system.terminals);
    if (a === undefined || b === undefined || !known || a === b)
      return { problem: 'The link is damaged: copy it again, whole.' };
    wires.push([a, b]);
  }
  return wires;
}
