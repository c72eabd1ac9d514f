import { ALL, makeTable, NONE, type Table } from './diagram-table.ts';
import type { Sets } from './sets.ts';

/**
 * Sets of states as reduced ordered binary decision diagrams: a state is a yes or no to each variable, a set is the
 * number of the node at which its questions begin. What is alike is kept once (two equal sets are the same number), so
 * inputs that do not matter, valves that do not influence each other and zones that are alike cost next to nothing.
 *
 * R. E. Bryant, "Graph-Based Algorithms for Boolean Function Manipulation", IEEE Transactions on Computers C-35 (1986).
 */
export interface Diagrams extends Sets<number> {
  readonly variables: number;
  /** States that answer yes to a variable. */
  readonly variable: (variable: number) => number;
  /** States of `b` where `a` holds, and of `c` elsewhere. */
  readonly ite: (a: number, b: number, c: number) => number;
  /** States that are in `a` with some answer or other to the variables of `over` (made by `together`). */
  readonly exists: (a: number, over: number) => number;
  /** States that are in `a` once this variable is answered so. */
  readonly restrict: (a: number, variable: number, value: 0 | 1) => number;
  /** The states of `a`, each with the other answer to this variable. */
  readonly flip: (a: number, variable: number) => number;
  /** The states of `a`, and those with one other answer to one of the variables of `over`. */
  readonly near: (a: number, over: number) => number;
  /** Several variables as one number, for `exists` and `near`. */
  readonly together: (variables: readonly number[]) => number;
  /** How many states: exact up to 2^53. */
  readonly count: (a: number) => number;
  /** Answers of one state of `a`, no wherever there is a choice; undefined when there is none. */
  readonly pick: (a: number) => Uint8Array | undefined;
  /** Whether the state with these answers, one a variable, is in `a`. */
  readonly has: (a: number, answers: ArrayLike<number>) => boolean;
  /** How many nodes have been made. */
  readonly size: () => number;
  /** Sets made since `keep` are forgotten by `reset`: their numbers come to mean other sets. */
  readonly keep: () => void;
  readonly reset: () => void;
}

// Names of what is remembered in the table.
const [AND, OR, NOT, MINUS, EXISTS, RESTRICT, FLIP, NEAR] = [0, 1, 2, 3, 4, 5, 6, 7];

/** An empty collection of diagrams over variables 0 to `variables - 1`, asked in that order. */
export function makeDiagrams(variables: number): Diagrams {
  const table = makeTable(variables);
  const { node, recall, remember, variable, low, high } = table;

  /** One of the operations on two sets: `ends` knows the answer when it is plain, else says -1. */
  const pairwise = (operation: number, ends: (a: number, b: number) => number) => {
    const apply = (a: number, b: number): number => {
      const plain = ends(a, b);
      if (plain >= 0) return plain;
      const known = recall(operation, a, b);
      if (known >= 0) return known;
      const [va, vb] = [variable(a), variable(b)];
      const v = Math.min(va, vb);
      const no = apply(va === v ? low(a) : a, vb === v ? low(b) : b);
      const yes = apply(va === v ? high(a) : a, vb === v ? high(b) : b);
      return remember(operation, a, b, node(v, no, yes));
    };
    return apply;
  };
  const meet = pairwise(AND, (a, b) => {
    if (a === b || b === ALL) return a;
    if (a === ALL) return b;
    return a === NONE || b === NONE ? NONE : -1;
  });
  const join = pairwise(OR, (a, b) => {
    if (a === b || b === NONE) return a;
    if (a === NONE) return b;
    return a === ALL || b === ALL ? ALL : -1;
  });
  const minus = pairwise(MINUS, (a, b) => {
    if (a === NONE || b === ALL || a === b) return NONE;
    return b === NONE ? a : -1;
  });
  // The same answer whichever way round: remembered once.
  const and = (a: number, b: number) => (a < b ? meet(a, b) : meet(b, a));
  const or = (a: number, b: number) => (a < b ? join(a, b) : join(b, a));

  function not(a: number): number {
    if (a <= ALL) return ALL - a;
    const known = recall(NOT, a, 0);
    return known >= 0 ? known : remember(NOT, a, 0, node(variable(a), not(low(a)), not(high(a))));
  }

  function restrict(a: number, at: number, value: 0 | 1): number {
    const v = variable(a);
    if (v > at) return a;
    if (v === at) return value === 1 ? high(a) : low(a);
    const key = at * 2 + value;
    const known = recall(RESTRICT, a, key);
    if (known >= 0) return known;
    return remember(RESTRICT, a, key, node(v, restrict(low(a), at, value), restrict(high(a), at, value)));
  }

  function flip(a: number, at: number): number {
    const v = variable(a);
    if (v > at) return a;
    if (v === at) return node(v, high(a), low(a));
    const known = recall(FLIP, a, at);
    if (known >= 0) return known;
    return remember(FLIP, a, at, node(v, flip(low(a), at), flip(high(a), at)));
  }

  /** The variables of `over` from `v` on. */
  const from = (over: number, v: number): number => {
    let rest = over;
    while (variable(rest) < v) rest = high(rest);
    return rest;
  };

  function exists(a: number, over: number): number {
    const v = variable(a);
    const rest = from(over, v);
    if (a <= ALL || rest === ALL) return a;
    const known = recall(EXISTS, a, rest);
    if (known >= 0) return known;
    const [no, yes] = [exists(low(a), rest), exists(high(a), rest)];
    return remember(EXISTS, a, rest, variable(rest) === v ? or(no, yes) : node(v, no, yes));
  }

  function near(a: number, over: number): number {
    const v = variable(a);
    const rest = from(over, v);
    if (a <= ALL || rest === ALL) return a;
    const known = recall(NEAR, a, rest);
    if (known >= 0) return known;
    const [no, yes] = [near(low(a), rest), near(high(a), rest)];
    const asked = variable(rest) === v;
    return remember(NEAR, a, rest, asked ? node(v, or(no, high(a)), or(yes, low(a))) : node(v, no, yes));
  }

  return {
    variables,
    none: NONE,
    all: ALL,
    isNone: (a) => a === NONE,
    variable: (v) => node(v, NONE, ALL),
    and,
    or,
    not,
    minus,
    ite: (a, b, c) => or(and(a, b), minus(c, a)),
    exists,
    restrict,
    flip,
    near,
    together: (some) => [...some].sort((a, b) => b - a).reduce((rest, v) => node(v, NONE, rest), ALL),
    count: (a) => countStates(table, a, variables),
    pick: (a) => pickState(table, a, variables),
    has(a, answers) {
      let at = a;
      while (at > ALL) at = answers[variable(at)] ? high(at) : low(at);
      return at === ALL;
    },
    size: table.size,
    keep: table.keep,
    reset: table.reset,
  };
}

function countStates({ variable, low, high }: Table, a: number, variables: number): number {
  const known = new Map<number, number>([
    [NONE, 0],
    [ALL, 1],
  ]);
  /** States by the answers to the variables from this node's on. */
  const below = (at: number): number => {
    const found = known.get(at);
    if (found !== undefined) return found;
    const sum = from(low(at), variable(at) + 1) + from(high(at), variable(at) + 1);
    known.set(at, sum);
    return sum;
  };
  /** A variable that is not asked may be answered either way. */
  const from = (at: number, v: number): number =>
    below(at) * 2 ** ((at <= ALL ? variables : variable(at)) - v);
  return from(a, 0);
}

function pickState({ variable, low, high }: Table, a: number, variables: number): Uint8Array | undefined {
  if (a === NONE) return undefined;
  const answers = new Uint8Array(variables);
  for (let at = a; at > ALL; ) {
    const yes = low(at) === NONE;
    answers[variable(at)] = yes ? 1 : 0;
    at = yes ? high(at) : low(at);
  }
  return answers;
}
