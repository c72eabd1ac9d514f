import type { Level } from '../task.ts';

/** Where a callout comes from: written by an author, or made from a seed. */
export type CalloutAddress =
  | { readonly kind: 'authored'; readonly id: string }
  | { readonly kind: 'made'; readonly system: string; readonly seed: number; readonly level: Level };

const ID = '[a-z][a-z0-9]*(?:-[a-z0-9]+)*';
const AUTHORED = new RegExp(`^callout/(${ID})$`);
const MADE = new RegExp(`^callout/(${ID})/(\\d{1,10})/([123])$`);
/** Seeds have 32 bits. */
const SEEDS = 2 ** 32;

/** The address of a callout: `callout/tank-that-never-stops`, or `callout/three-port/4711/2`. The same one is always the same callout. */
export const writeCallout = (callout: CalloutAddress): string =>
  callout.kind === 'authored'
    ? `callout/${callout.id}`
    : `callout/${callout.system}/${callout.seed}/${callout.level}`;

/** Reads an address; undefined for anything else. Whether there is such a callout or system, it does not know. */
export function readCallout(text: string): CalloutAddress | undefined {
  const [, id] = AUTHORED.exec(text) ?? [];
  if (id !== undefined) return { kind: 'authored', id };
  const [, system, digits, level] = MADE.exec(text) ?? [];
  const seed = Number(digits);
  if (system === undefined || !(seed < SEEDS)) return undefined;
  return { kind: 'made', system, seed, level: Number(level) as Level };
}

/** The page of a callout, from the site's root. */
export const calloutPath = (callout: CalloutAddress): string =>
  callout.kind === 'authored' ? `/callouts/${callout.id}/` : `/callouts/visit/#${writeCallout(callout)}`;
