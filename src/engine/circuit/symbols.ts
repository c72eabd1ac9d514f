import { type Config, type Contact, positionIndex, type System } from '../model/system.ts';
import type { Atoms } from './atoms.ts';
import { type Diagrams, makeDiagrams } from './diagram.ts';
import { orderQuestions } from './order.ts';
import { anyOf } from './sets.ts';

/**
 * The states of a system as diagrams: a variable to each input, and to each mover the bits of its position's index.
 * Bit patterns past the last position mean the last one too: every set here has both or neither.
 */
export interface Symbols extends Atoms<number> {
  readonly system: System;
  readonly sets: Diagrams;
  /** All inputs, for `exists` and `near`. */
  readonly inputs: number;
  /** Per contact, the states in which it is closed. */
  readonly closed: readonly number[];
  /** States that are in `a` once this mover stands in this position. */
  readonly standing: (a: number, mover: number, position: number) => number;
  /** How many states of the system: exact up to 2^53. */
  readonly count: (a: number) => number;
  /** One state of `a`, with inputs at rest where it has the choice; undefined when there is none. */
  readonly pick: (a: number) => Config | undefined;
  readonly has: (a: number, config: Config) => boolean;
}

/** Everything about a system that no wire changes. */
export function makeSymbols(system: System): Symbols {
  const { movers, inputs } = system;
  const inputAt: number[] = [];
  /** Per mover, the variables of its position, the highest bit first. */
  const bitsAt: number[][] = movers.map(() => []);
  let variables = 0;
  for (const question of orderQuestions(system)) {
    if ('input' in question) inputAt[question.input] = variables++;
    else {
      const last = movers[question.mover]!.positions.length - 1;
      for (let left = last; left > 0; left >>= 1) bitsAt[question.mover]!.push(variables++);
    }
  }
  const sets = makeDiagrams(variables);
  const { variable, and, not, ite, restrict, together } = sets;

  const bit = (value: number, bits: readonly number[], k: number): 0 | 1 =>
    ((value >> (bits.length - 1 - k)) & 1) === 1 ? 1 : 0;
  /** States with exactly this pattern in the mover's bits. */
  const pattern = (mover: number, value: number): number => {
    const bits = bitsAt[mover]!;
    return bits.reduce(
      (set, v, k) => and(set, bit(value, bits, k) ? variable(v) : not(variable(v))),
      sets.all,
    );
  };
  const exact = movers.map(({ positions }, mover) =>
    positions.map((_, position) => pattern(mover, position)),
  );
  const stand = exact.map((patterns) =>
    patterns.map((own, position) =>
      position === patterns.length - 1 ? not(anyOf(sets, patterns.slice(0, -1))) : own,
    ),
  );
  const valid = exact.reduce((set, patterns) => and(set, anyOf(sets, patterns)), sets.all);
  const isSet = (input: number, setting: 0 | 1): number => {
    const active = variable(inputAt[input]!);
    return setting === 1 ? active : not(active);
  };
  const stands = (mover: number, position: number): number => stand[mover]![position]!;

  const answersOf = ({ inputs: set, place }: Config): Uint8Array => {
    const answers = new Uint8Array(variables);
    inputs.forEach((_, input) => {
      answers[inputAt[input]!] = (set >> input) & 1;
    });
    movers.forEach((mover, m) => {
      const position = positionIndex(mover, place);
      const bits = bitsAt[m]!;
      bits.forEach((v, k) => {
        answers[v] = bit(position, bits, k);
      });
    });
    return answers;
  };
  const symbols = {
    system,
    sets,
    isSet,
    stands,
    inputs: together(inputAt),
    standing(a: number, mover: number, position: number) {
      const bits = bitsAt[mover]!;
      return bits.reduce((set, v, k) => restrict(set, v, bit(position, bits, k)), a);
    },
    count: (a: number) => sets.count(and(a, valid)),
    pick(a: number): Config | undefined {
      const answers = sets.pick(and(a, valid));
      if (!answers) return undefined;
      const positionIn = (mover: number) => bitsAt[mover]!.reduce((value, v) => value * 2 + answers[v]!, 0);
      return {
        inputs: inputs.reduce((set, _, input) => set | (answers[inputAt[input]!]! << input), 0),
        place: movers.reduce((place, { stride }, mover) => place + positionIn(mover) * stride, 0),
      };
    },
    has: (a: number, config: Config) => sets.has(a, answersOf(config)),
  };
  const closed = system.contacts.map((contact) => whenClosed(system, contact, { sets, isSet, stands }, ite));
  return { ...symbols, closed };
}

/**
 * The states in which a contact is closed, by asking it: run it, see what it reads first, and branch on that. It then
 * depends on what it reads of its own part, and nothing else is tried.
 */
function whenClosed(
  { parts, inputs, movers }: System,
  { part, spec }: Contact,
  { sets, isSet, stands }: Atoms<number>,
  ite: Diagrams['ite'],
): number {
  const { slots, mover } = parts[part]!;
  const positions = movers[mover]?.positions ?? [''];
  const known = new Map<number, 0 | 1>();
  let at = -1;
  return branch();

  function branch(): number {
    let asked: number | 'position' | undefined;
    const setting: Record<string, string> = {};
    for (const [slot, input] of Object.entries(slots)) {
      Object.defineProperty(setting, slot, {
        enumerable: true,
        get() {
          if (!known.has(input)) asked ??= input;
          return inputs[input]!.settings[known.get(input) ?? 0];
        },
      });
    }
    const closed = spec.closed({
      setting,
      get position() {
        if (at < 0 && positions.length > 1) asked ??= 'position';
        return positions[Math.max(at, 0)]!;
      },
    });
    if (asked === undefined) return closed ? sets.all : sets.none;
    if (asked === 'position') {
      const each = positions.map((_, position) => {
        at = position;
        return sets.and(stands(mover, position), branch());
      });
      at = -1;
      return anyOf(sets, each);
    }
    const input = asked;
    const [no, yes] = ([0, 1] as const).map((value) => {
      known.set(input, value);
      return branch();
    });
    known.delete(input);
    return ite(isSet(input, 1), yes!, no!);
  }
}
