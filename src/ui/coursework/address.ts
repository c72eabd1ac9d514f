/** What the coursework page is asked for by the part of its address after the `#`. */
export type Wanted =
  | { readonly kind: 'start' }
  /** A coursework that comes with the link itself: `#c=…&code=…&name=…`; with a slot, that thing to do. */
  | { readonly kind: 'link'; readonly hash: string; readonly slot?: string }
  /** A sample coursework of this site, by its id. */
  | { readonly kind: 'sample'; readonly id: string }
  /** A sitting kept on this device; with a slot, that thing to do. */
  | { readonly kind: 'sitting'; readonly id: string; readonly slot?: string };

/** Reads an address. */
export function readHash(hash: string): Wanted {
  const pieces = new URLSearchParams(hash.replace(/^#/, ''));
  const slot = pieces.get('slot');
  const at = slot ? { slot } : {};
  if (pieces.has('c')) return { kind: 'link', hash, ...at };
  const sample = pieces.get('sample');
  if (sample) return { kind: 'sample', id: sample };
  const sitting = pieces.get('sitting');
  return sitting ? { kind: 'sitting', id: sitting, ...at } : { kind: 'start' };
}

/** The address of a sitting, and of a slot in it: `#sitting=controls+AB12&slot=valves/2`. */
export const sittingHash = (id: string, slot?: string): string =>
  `#sitting=${plus(id)}${slot === undefined ? '' : `&slot=${plus(slot)}`}`;

// Ids hold letters, digits, hyphens, a space or a stroke: only the space needs another sign.
const plus = (text: string): string => encodeURIComponent(text).replaceAll('%20', '+').replaceAll('%2F', '/');
