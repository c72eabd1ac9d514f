import type { PartKind } from '../../engine/model/part.ts';
import type { SystemPart } from '../../engine/model/system.ts';
import { findKind, kindNames } from '../../engine/parts/index.ts';
import { MOST_NAME } from '../../files/bench.ts';

type Parts = Readonly<Record<string, SystemPart>>;

/** Every kind of part with terminals to wire, by title. The strip is on every bench already. */
export const shelf: readonly PartKind[] = kindNames()
  .flatMap((name) => findKind(name, {}) ?? [])
  .filter(({ kind, terminals }) => terminals.length > 0 && kind !== 'strip')
  .sort((a, b) => a.title.localeCompare(b.title, 'en'));

/** Kinds that only water knows: they come with the pipes of a layout. */
export const pipework: readonly PartKind[] = kindNames()
  .flatMap((name) => findKind(name, {}) ?? [])
  .filter(({ terminals }) => terminals.length === 0);

/** What lies on an empty bench: a strip, and the supply that everything needs. */
export const emptyBench = (ways = 12): Parts => ({
  spur: { kind: 'fused-spur', name: 'Fused spur' },
  strip: { kind: 'strip', name: 'Strip', options: { ways } },
});

/** The parts with one more of a kind, under an id and a name that no other part has. */
export function withPart(parts: Parts, kind: PartKind): { readonly parts: Parts; readonly id: string } {
  const numbered = (base: string, between: string, taken: (text: string) => boolean): string => {
    if (!taken(base)) return base;
    let n = 2;
    while (taken(`${base}${between}${n}`)) n++;
    return `${base}${between}${n}`;
  };
  const id = numbered(kind.kind, '-', (text) => text in parts);
  const names = Object.values(parts).map(({ name }) => name);
  const name = numbered(kind.title.slice(0, MOST_NAME - 3), ' ', (text) => names.includes(text));
  return { parts: { ...parts, [id]: { kind: kind.kind, name } }, id };
}

export const kindOf = ({ kind, options }: SystemPart): PartKind | undefined => findKind(kind, options ?? {});

/** Why a part must stay on the bench; undefined when it may go. */
export function mustStay(parts: Parts, id: string): string | undefined {
  const part = parts[id];
  if (part?.kind === 'strip') return 'Every bench has its strip.';
  const supplies = Object.keys(parts).filter((other) => {
    const there = parts[other];
    return there !== undefined && kindOf(there)?.supply !== undefined;
  });
  return supplies.length === 1 && supplies[0] === id ? 'Something must supply the bench.' : undefined;
}
