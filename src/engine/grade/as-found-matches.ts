import type { SystemSpec } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { type Match, partsByKind, type Site } from './as-found-parts.ts';

/** At most so many matches are tried out: all of them for most layouts, else those wired most alike. */
const MOST_TRIED = 64;
/** Up to so many ways to match are written out and compared; beyond, the best is climbed to by swaps. */
const MOST_LISTED = 1000;

/** Terminals of parts that wires alone join, as pairs of names in order. Joints between do not count. */
function pairsOf(wires: readonly Wire[], isPart: (id: string) => boolean): [string, string][] {
  const net = new Map<string, Set<string>>();
  for (const [a, b] of wires) {
    const [one, two] = [net.get(a) ?? new Set([a]), net.get(b) ?? new Set([b])];
    if (one === two) continue;
    for (const end of two) one.add(end);
    for (const end of one) net.set(end, one);
  }
  return [...new Set(net.values())].flatMap((ends) => {
    const own = [...ends].filter((end) => isPart(end.slice(0, end.indexOf('/')))).sort();
    return own.flatMap((a, k) => own.slice(k + 1).map((b): [string, string] => [a, b]));
  });
}

/** How many joined pairs of a reference are joined on site too, with its parts matched so. */
function makeLikeness(
  site: Site,
  layout: Pick<SystemSpec, 'parts'>,
  references: readonly (readonly Wire[])[],
) {
  const there = new Set([...partsByKind(layout.parts).values()].flat());
  const here = new Set([...partsByKind(site.parts).values()].flat());
  const joined = new Set(pairsOf(site.wires, (id) => here.has(id)).map((pair) => pair.join(' ')));
  const wanted = references.map((wires) => pairsOf(wires, (id) => there.has(id)));
  return (match: Match): number => {
    const own = (terminal: string) => {
      const slash = terminal.indexOf('/');
      return `${match[terminal.slice(0, slash)]}${terminal.slice(slash)}`;
    };
    const alike = wanted.map((pairs) => {
      const met = pairs.filter(([a, b]) => {
        const [x, y] = [own(a), own(b)];
        return joined.has(x < y ? `${x} ${y}` : `${y} ${x}`);
      });
      return met.length;
    });
    return Math.max(0, ...alike);
  };
}

function permutations(items: readonly string[]): string[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((first, k) =>
    permutations([...items.slice(0, k), ...items.slice(k + 1)]).map((rest) => [first, ...rest]),
  );
}

/**
 * Ways to match the parts of a site with those of a layout one to one by kind, the one wired most like a reference
 * first; none when their numbers differ. On a site made from this layout there is one: every part is itself.
 */
export function matches(
  site: Site,
  layout: Pick<SystemSpec, 'id' | 'parts'>,
  references: readonly (readonly Wire[])[],
): Match[] {
  const here = partsByKind(site.parts);
  const there = partsByKind(layout.parts);
  const kinds = [...there];
  const fits =
    here.size === there.size && kinds.every(([kind, ids]) => here.get(kind)?.length === ids.length);
  if (!fits) return [];
  const itself = kinds.every(([kind, ids]) => ids.every((id) => here.get(kind)!.includes(id)));
  if (site.layout === layout.id && itself)
    return [Object.fromEntries(kinds.flatMap(([, ids]) => ids.map((id) => [id, id])))];

  const likeness = makeLikeness(site, layout, references);
  const total = kinds.reduce((product, [, { length }]) => {
    let ways = product;
    for (let n = 2; n <= length; n++) ways *= n;
    return ways;
  }, 1);
  const first = Object.fromEntries(
    kinds.flatMap(([kind, ids]) => ids.map((id, k) => [id, here.get(kind)![k]!])),
  );
  const all =
    total <= MOST_LISTED
      ? every(kinds, here)
      : climb(
          first,
          kinds.map(([, ids]) => ids),
          likeness,
        );
  return all
    .map((match) => ({ match, alike: likeness(match) }))
    .sort((a, b) => b.alike - a.alike)
    .slice(0, MOST_TRIED)
    .map(({ match }) => match);
}

const every = (kinds: readonly [string, string[]][], here: ReadonlyMap<string, string[]>): Match[] =>
  kinds.reduce<Match[]>(
    (sum, [kind, ids]) =>
      permutations(here.get(kind)!).flatMap((order) =>
        sum.map((match) => ({ ...match, ...Object.fromEntries(ids.map((id, k) => [id, order[k]!])) })),
      ),
    [{}],
  );

/** Swaps two parts of a kind for as long as that makes the wiring more alike; then the best and all one swap away. */
function climb(
  first: Match,
  groups: readonly (readonly string[])[],
  likeness: (match: Match) => number,
): Match[] {
  const swaps = groups.flatMap((ids) => ids.flatMap((a, k) => ids.slice(k + 1).map((b) => [a, b] as const)));
  const swapped = (match: Match, [a, b]: readonly [string, string]): Match => ({
    ...match,
    [a]: match[b]!,
    [b]: match[a]!,
  });
  let best = first;
  for (let least = likeness(first); ; ) {
    const next = swaps.map((swap) => swapped(best, swap)).find((match) => likeness(match) > least);
    if (!next) break;
    best = next;
    least = likeness(best);
  }
  return [best, ...swaps.map((swap) => swapped(best, swap))];
}
