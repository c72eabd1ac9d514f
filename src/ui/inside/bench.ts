import { buildSystem } from '../../engine/model/build.ts';
import type { PartKind, TerminalSpec } from '../../engine/model/part.ts';
import {
  bitsOf,
  type Config,
  type Input,
  type Part,
  partNamed,
  type System,
  type SystemSpec,
} from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { findKind, kindNames } from '../../engine/parts/index.ts';

/** One part on a bench: a supply that can fail, its neutral and earth wired, and terminals that can be made live. */
export interface Bench {
  readonly kind: PartKind;
  readonly system: System;
  /** The part itself among the system's, and its number. */
  readonly part: Part;
  readonly index: number;
  /** Terminals that the bench may put live on. */
  readonly feeds: readonly TerminalSpec[];
  /** Outputs of a valve, on which a live can arrive from elsewhere. */
  readonly outside: readonly TerminalSpec[];
  /** Extra-low pairs that can be joined, each by its two terminals. */
  readonly pairs: readonly (readonly [string, string])[];
  /** What is fed at the start: what such a part has at all times. */
  readonly start: readonly string[];
}

export const PART = 'part';
const SUPPLY = 'bench';

/** A mechanism that opens and shuts a way for water. */
export const isValve = ({ ports, motion, work, heat }: PartKind): boolean =>
  ports !== undefined && motion !== undefined && work === undefined && heat === undefined;

function specOf(kind: PartKind): SystemSpec {
  const own = { kind: kind.kind, name: kind.title };
  const slots = (kind.inputs ?? []).map(({ slot }) => [slot, { label: slot.replaceAll('-', ' ') }] as const);
  const inputs = Object.fromEntries(slots);
  return {
    id: `inside-${kind.kind}`,
    title: kind.title,
    parts: kind.supply
      ? { [PART]: own }
      : { [SUPPLY]: { kind: 'fused-spur', name: 'Supply', inputs: { supply: 'power' } }, [PART]: own },
    inputs: kind.supply ? inputs : { power: { label: 'power' }, ...inputs },
    pipes: [],
    demands: [],
  };
}

/**
 * A part on the bench.
 * @throws RangeError naming the kinds there are
 */
export function benchFor(name: string): Bench {
  const kind = findKind(name, {});
  if (!kind || kind.terminals.length === 0)
    throw new RangeError(
      `expected a kind of part with terminals (${kindNames().sort().join(', ')}), found "${name}"`,
    );
  const delivers = new Set((kind.contacts ?? []).map(({ between }) => between[1]));
  const loads = new Set((kind.loads ?? []).flatMap(({ between }) => between));
  const fed = (kind.contacts ?? []).map(({ between }) => between[0]);
  const carries = ({ id }: TerminalSpec) => delivers.has(id) || loads.has(id) || fed.includes(id);
  const lines = kind.supply
    ? []
    : kind.terminals.filter((one) => (one.duty === 'line' || one.duty === 'switched') && carries(one));
  const valve = isValve(kind);
  const low = kind.terminals.filter(({ duty }) => duty === 'extra-low').map(({ id }) => id);
  const system = buildSystem(specOf(kind), findKind);
  const part = partNamed(system, PART);
  return {
    kind,
    system,
    part,
    index: system.parts.indexOf(part),
    feeds: lines.filter(({ id }) => !delivers.has(id)),
    outside: valve ? lines.filter(({ id }) => delivers.has(id)) : [],
    pairs: low.flatMap((one, k) => (k % 2 === 0 && low[k + 1] ? [[one, low[k + 1] as string] as const] : [])),
    start: lines
      .filter(({ id, duty }) =>
        valve
          ? id === kind.endSwitch?.feed
          : duty === 'line' || (fed.includes(id) && !loads.has(id) && !delivers.has(id)),
      )
      .map(({ id }) => id),
  };
}

/** The wires of the bench: neutral and earth always, live to what is fed, and pairs that are joined. */
export function benchWires(
  { kind, system, pairs }: Bench,
  fed: ReadonlySet<string>,
  joined: ReadonlySet<string> = new Set(),
): Wire[] {
  const at = (id: string) => `${PART}/${id}`;
  const own = pairs.filter(([one]) => joined.has(one)).map(([a, b]): Wire => [at(a), at(b)]);
  if (kind.supply) return own;
  const pole = { line: 'L', neutral: 'N', earth: 'E' } as const;
  const wires = kind.terminals.flatMap(({ id, duty }): Wire[] => {
    if (duty === 'neutral') return [[`${SUPPLY}/${pole.neutral}`, at(id)]];
    if (duty === 'earth') return [[`${SUPPLY}/${pole.earth}`, at(id)]];
    return fed.has(id) ? [[`${SUPPLY}/${pole.line}`, at(id)]] : [];
  });
  return [...wires, ...own].filter((wire) => wire.every((end) => system.nodeOf.has(end)));
}

/** Inputs that the part itself has, with their numbers; those of the bench's supply are not among them. */
export const ownInputs = ({ system, kind }: Bench): readonly { input: Input; index: number }[] =>
  system.inputs.flatMap((input, index) => (kind.supply || input.id !== 'power' ? [{ input, index }] : []));

/** The number of the input that lets the power fail. */
export const powerOf = ({ system }: Bench): number => system.supply.input;

/** How it stands at the start: powered, all else at rest. */
export const startOf = ({ system }: Bench): Config => ({
  inputs: bitsOf(system, { power: 'on', supply: 'on' }),
  place: 0,
});
