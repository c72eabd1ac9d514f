import { buildSystem } from '../model/build.ts';
import type { PartKind } from '../model/part.ts';
import type { System, SystemPart, SystemSpec } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { findKind } from '../parts/index.ts';

/** What is on site: the parts by id and the wires between them. */
export interface Site {
  readonly parts: Readonly<Record<string, SystemPart>>;
  readonly wires: readonly Wire[];
  /** The id of the layout whose parts these are, by the same ids: then its pipes say which part is which. */
  readonly layout?: string;
}

/** Which part of the site stands where a part of the layout does: site's id by layout's id. */
export type Match = Readonly<Record<string, string>>;

/** What becomes of a part when layouts are compared. */
type Role = 'matched' | 'joint' | 'pipework';

/** A strip only joins; pipework has nothing to wire; all other parts are matched. */
export function roleOf(kind: PartKind): Role {
  if (kind.terminals.length === 0) return 'pipework';
  return kind.terminals.every(({ duty }) => duty === 'joint') ? 'joint' : 'matched';
}

/** Ids of the parts that have a role, by kind. */
export function partsByKind(
  parts: Readonly<Record<string, SystemPart>>,
  role: Role = 'matched',
): Map<string, string[]> {
  const byKind = new Map<string, string[]>();
  for (const [id, { kind, options }] of Object.entries(parts)) {
    const found = findKind(kind, options ?? {});
    if (!found || roleOf(found) !== role) continue;
    byKind.set(kind, [...(byKind.get(kind) ?? []), id]);
  }
  return byKind;
}

/** How many parts of each kind the site has more (+) or fewer (−) than the layout; empty when they match one to one. */
export function partsApart(
  site: Pick<Site, 'parts'>,
  layout: Pick<SystemSpec, 'parts'>,
): { readonly kind: string; readonly more: number }[] {
  const here = partsByKind(site.parts);
  const there = partsByKind(layout.parts);
  return [...new Set([...here.keys(), ...there.keys()])]
    .map((kind) => ({ kind, more: (here.get(kind)?.length ?? 0) - (there.get(kind)?.length ?? 0) }))
    .filter(({ more }) => more !== 0);
}

/**
 * The site as a wiring of the layout: the layout's parts under the site's names, on the site's own strips, so that the
 * layout's judge speaks of the site in the site's words.
 * @param match every part of the layout that is wired, with the part of the site that stands for it
 */
export function translate(
  site: Site,
  layout: SystemSpec,
  match: Match,
): { readonly system: System; readonly wires: Wire[] } {
  const parts: Record<string, SystemPart> = {};
  const renamed = new Map<string, string>();
  for (const [id, part] of Object.entries(layout.parts)) {
    const own = match[id];
    const there = own === undefined ? undefined : site.parts[own];
    if (own !== undefined && there) {
      renamed.set(own, id);
      const { cores, sleeved, ...rest } = part;
      const found = {
        ...(there.cores && { cores: there.cores }),
        ...(there.sleeved && { sleeved: there.sleeved }),
      };
      parts[id] = { ...rest, name: there.name, short: there.short ?? there.name, ...found };
    } else if (roleOf(findKind(part.kind, part.options ?? {})!) === 'pipework') parts[id] = part;
  }
  for (const ids of partsByKind(site.parts, 'joint').values()) {
    for (const own of ids) {
      // A strip's id may be taken by a part of the layout.
      let id = own;
      while (parts[id] !== undefined) id = `${id}-found`;
      renamed.set(own, id);
      parts[id] = site.parts[own]!;
    }
  }
  const rename = (terminal: string) => {
    const slash = terminal.indexOf('/');
    return `${renamed.get(terminal.slice(0, slash))}${terminal.slice(slash)}`;
  };
  return {
    system: buildSystem({ ...layout, parts }, findKind),
    wires: site.wires.map(([a, b]): Wire => [rename(a), rename(b)]),
  };
}
