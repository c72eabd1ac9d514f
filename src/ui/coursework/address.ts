/** What the coursework page is asked for by the part of its address after the `#`. */
export type Wanted =
  | { readonly kind: 'start' }
  /** A coursework that comes with the link itself: `#c=…&code=…&name=…`. */
  | { readonly kind: 'link'; readonly hash: string }
  /** A sample coursework of this site, by its id. */
  | { readonly kind: 'sample'; readonly id: string }
  /** A sitting kept on this device; with a slot, that thing to do. */
  | { readonly kind: 'sitting'; readonly id: string; readonly slot?: string };

/** Reads an address. A link may name a slot too: see `slotIn`. */
export function readHash(hash: string): Wanted {
  const pieces = new URLSearchParams(hash.replace(/^#/, ''));
  if (pieces.has('c')) return { kind: 'link', hash };
  const sample = pieces.get('sample');
  if (sample) return { kind: 'sample', id: sample };
  const sitting = pieces.get('sitting');
  if (!sitting) return { kind: 'start' };
  const slot = pieces.get('slot');
  return slot ? { kind: 'sitting', id: sitting, slot } : { kind: 'sitting', id: sitting };
}

/** The address of a sitting, and of a slot in it: `#sitting=controls+AB12&slot=valves/2`. */
export const sittingHash = (id: string, slot?: string): string =>
  `#sitting=${plus(id)}${slot === undefined ? '' : `&slot=${plus(slot)}`}`;

// Ids hold letters, digits, hyphens, a space or a stroke: only the space needs another sign.
const plus = (text: string): string => encodeURIComponent(text).replaceAll('%20', '+').replaceAll('%2F', '/');
