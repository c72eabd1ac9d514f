import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Diagrams, makeDiagrams } from '../../../src/engine/circuit/diagram.ts';
import { must } from '../support/must.ts';
import { seed } from '../support/random.ts';

const VARIABLES = 5;
const STATES = 1 << VARIABLES;

/** The answer to variable `v` in state number `state`. */
const answer = (state: number, v: number): number => (state >> v) & 1;
const answers = (state: number): number[] => Array.from({ length: VARIABLES }, (_, v) => answer(state, v));

/** A set as a truth table: a flag to each state. Small enough to be plainly right. */
type Truth = readonly boolean[];
const truth = (flag: (state: number) => boolean): Truth =>
  Array.from({ length: STATES }, (_, state) => flag(state));

/** The set of a truth table, state by state. */
const drawn = ({ or, and, not, none, all, variable }: Diagrams, table: Truth): number =>
  table.reduce((set, inside, state) => {
    if (!inside) return set;
    const one = answers(state).reduce((s, yes, v) => and(s, yes ? variable(v) : not(variable(v))), all);
    return or(set, one);
  }, none);

const tables = fc.array(fc.boolean(), { minLength: STATES, maxLength: STATES });
const variable = fc.nat(VARIABLES - 1);
const several = fc.uniqueArray(variable);

/** Fails unless the set holds exactly the states of the table, and is the very number that the table draws. */
function same(sets: Diagrams, set: number, table: Truth): void {
  expect(truth((state) => sets.has(set, answers(state)))).toEqual(table);
  expect(set).toBe(drawn(sets, table));
}
const check = (property: Parameters<typeof fc.assert>[0]) => fc.assert(property, { seed, numRuns: 150 });

describe('sets as decision diagrams are what their truth tables say', () => {
  test('and, or, not, minus and if-then-else', () => {
    const sets = makeDiagrams(VARIABLES);
    check(
      fc.property(tables, tables, tables, (p, q, r) => {
        const [a, b, c] = [drawn(sets, p), drawn(sets, q), drawn(sets, r)];
        same(
          sets,
          sets.and(a, b),
          truth((s) => !!p[s] && !!q[s]),
        );
        same(
          sets,
          sets.or(a, b),
          truth((s) => !!p[s] || !!q[s]),
        );
        same(
          sets,
          sets.not(a),
          truth((s) => !p[s]),
        );
        same(
          sets,
          sets.minus(a, b),
          truth((s) => !!p[s] && !q[s]),
        );
        same(
          sets,
          sets.ite(a, b, c),
          truth((s) => !!(p[s] ? q[s] : r[s])),
        );
      }),
    );
  });

  test('a variable answered, forgotten or answered the other way', () => {
    const sets = makeDiagrams(VARIABLES);
    check(
      fc.property(tables, variable, several, (p, v, over) => {
        const a = drawn(sets, p);
        const cube = sets.together(over);
        const mask = over.reduce((sum, one) => sum | (1 << one), 0);
        same(
          sets,
          sets.restrict(a, v, 1),
          truth((s) => !!p[s | (1 << v)]),
        );
        same(
          sets,
          sets.restrict(a, v, 0),
          truth((s) => !!p[s & ~(1 << v)]),
        );
        same(
          sets,
          sets.flip(a, v),
          truth((s) => !!p[s ^ (1 << v)]),
        );
        same(
          sets,
          sets.exists(a, cube),
          truth((s) => p.some((inside, t) => inside && ((s ^ t) & ~mask) === 0)),
        );
        same(
          sets,
          sets.near(a, cube),
          truth((s) => !!p[s] || over.some((one) => p[s ^ (1 << one)])),
        );
      }),
    );
  });

  test('the count is the number of states, and a picked state is one of them', () => {
    const sets = makeDiagrams(VARIABLES);
    check(
      fc.property(tables, (p) => {
        const a = drawn(sets, p);
        expect(sets.count(a)).toBe(p.filter(Boolean).length);
        const picked = sets.pick(a);
        if (p.includes(true)) expect(sets.has(a, must(picked))).toBe(true);
        else expect(picked).toBeUndefined();
      }),
    );
  });

  test('sets kept before a reset stay what they were, and what is made after it is right', () => {
    const sets = makeDiagrams(VARIABLES);
    const low = truth((s) => s % 3 === 0);
    const kept = drawn(sets, low);
    sets.keep();
    check(
      fc.property(tables, (p) => {
        sets.reset();
        same(
          sets,
          sets.and(kept, drawn(sets, p)),
          truth((s) => !!low[s] && !!p[s]),
        );
        expect(truth((state) => sets.has(kept, answers(state)))).toEqual(low);
      }),
    );
  });
});

describe('large diagrams', () => {
  test('counts stay exact to 2^53: all states but one of 53 variables', () => {
    const sets = makeDiagrams(53);
    const every = sets.together(Array.from({ length: 53 }, (_, v) => v));
    expect(sets.count(sets.not(every))).toBe(2 ** 53 - 1);
  });

  test('the table grows past its first size and keeps every set the same', () => {
    // Pairs far apart in the order cost a node for each combination of the first halves (Bryant 1986, section 1).
    const pairs = 13;
    const sets = makeDiagrams(2 * pairs);
    const either = (first: number) =>
      Array.from({ length: pairs }, (_, k) => k).reduce(
        (set, k) => sets.or(set, sets.and(sets.variable(first + k), sets.variable(pairs + k))),
        sets.none,
      );
    const a = either(0);
    expect(sets.size()).toBeGreaterThan(1 << pairs);
    expect(either(0)).toBe(a);
    // Each pair is both yes in one of its four combinations: 4^13 − 3^13 states have at least one such pair.
    expect(sets.count(a)).toBe(4 ** pairs - 3 ** pairs);
    expect(sets.count(sets.not(a))).toBe(3 ** pairs);
  });
});
