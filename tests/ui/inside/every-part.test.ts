import { describe, expect, test } from 'vitest';
import { directions, evaluate } from '../../../src/engine/circuit/plain.ts';
import { partState } from '../../../src/engine/model/system.ts';
import { findKind, kindNames } from '../../../src/engine/parts/index.ts';
import { benchFor, benchWires } from '../../../src/ui/inside/bench.ts';
import { rowsOf } from '../../../src/ui/inside/rows.ts';
import { sayInside } from '../../../src/ui/inside/say.ts';

const wired = kindNames().filter((name) => (findKind(name, {})?.terminals.length ?? 0) > 0);
/** Every choice of some of these, at most the first ten of them varied. */
const subsets = (ids: readonly string[]): Set<string>[] =>
  Array.from(
    { length: 2 ** Math.min(10, ids.length) },
    (_, mix) => new Set(ids.filter((_, k) => (mix >> k) & 1)),
  );

describe('Every part with its cover off', () => {
  test.each(wired)(
    '%s: what is said equals what the engine says, in every mix of feeds, settings and positions',
    (name) => {
      const bench = benchFor(name);
      const { system, part, index, kind } = bench;
      const fed = [...bench.feeds, ...bench.outside].map(({ id }) => id);
      for (const feeds of subsets(fed))
        for (const joined of subsets(bench.pairs.map(([one]) => one)))
          for (let inputs = 0; inputs < 2 ** system.inputs.length; inputs++)
            for (let place = 0; place < system.places; place++) {
              const wires = benchWires(bench, feeds, joined);
              const config = { inputs, place };
              const live = evaluate(system, wires, config);
              const says = sayInside(bench, wires, config);
              const state = partState(system, part, config);
              const made = (kind.contacts ?? []).filter(({ closed }) => closed(state));
              expect(says.made.map((words) => words.slice(0, words.indexOf(':')).toLowerCase())).toEqual(
                made.map(({ id }) => id.toLowerCase()),
              );
              const works = system.loads.flatMap((load, k) => (load.part === index ? [live.works[k]] : []));
              expect(says.feeds.map((words) => /: fed|so it works/.test(words))).toEqual(works);
              const way = directions(system, live, place)[part.mover] ?? 0;
              expect(/winds it on|changes over/.test(says.moves)).toBe(way > 0);
              expect(/takes it back|goes back/.test(says.moves)).toBe(way < 0);
              expect([...says.feeds, ...says.made, says.moves, says.does].join(' ')).not.toMatch(
                /undefined|NaN|\[object/,
              );
            }
    },
  );

  test.each(wired)('%s: every contact and load has one row, between its own two ends', (name) => {
    const kind = findKind(name, {});
    const pieces = [
      ...(kind?.contacts ?? []).map(({ id, between }) => ({ what: 'contact', id, between })),
      ...(kind?.loads ?? []).map(({ id, between }) => ({ what: 'load', id, between })),
    ];
    const rows = kind ? rowsOf(kind) : [];
    const key = (what: string, id: string, ends: readonly string[]) =>
      `${what} ${id} ${[...ends].sort().join(' ')}`;
    expect(rows.map(({ what, id, left, right }) => key(what, id, [left, right])).sort()).toEqual(
      pieces.map(({ what, id, between }) => key(what, id, between)).sort(),
    );
    rows.forEach((row, k) => {
      expect(row.joinsLeft).toBe(k > 0 && rows[k - 1]?.left === row.left);
      expect(row.joinsRight).toBe(k > 0 && rows[k - 1]?.right === row.right);
    });
  });

  test('An unknown kind is refused with the kinds there are', () => {
    expect(() => benchFor('fluxer')).toThrow(/two-port-valve.*found "fluxer"/s);
    expect(() => benchFor('radiators')).toThrow(RangeError);
  });

  // Source: Approved Document G, 2015 edition with 2016 amendments, key terms: a non-self-resetting cut-out.
  test('A tripped cut-out stays open until its trip is set back by hand', () => {
    const bench = benchFor('energy-cut-out');
    const wires = benchWires(bench, new Set(['IN']));
    const trip = 1 << system('trip');
    const power = 1 << system('power');
    function system(id: string): number {
      return bench.system.inputs.findIndex((input) => input.id === id);
    }
    expect(sayInside(bench, wires, { inputs: power | trip, place: 0 }).made).toEqual([]);
    expect(sayInside(bench, wires, { inputs: power, place: 0 }).made).toEqual(['Cut-out: IN to OUT']);
  });
});
