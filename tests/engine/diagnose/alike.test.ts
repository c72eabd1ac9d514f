import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alikeGroups } from '../../../src/engine/diagnose/alike.ts';
import {
  type Candidate,
  candidateOf,
  singleCandidates,
  strayCandidates,
  swappedCandidates,
} from '../../../src/engine/diagnose/candidate.ts';
import { enterAll, followAll, outcomeAt } from '../../../src/engine/diagnose/evidence.ts';
import { arrive } from '../../../src/engine/diagnose/setup.ts';
import { looks } from '../../../src/engine/diagnose/tests.ts';
import { operate } from '../../../src/engine/diagnose/visit.ts';
import { settingsOf } from '../../../src/engine/model/system.ts';
import { must } from '../support/must.ts';
import { seed } from '../support/random.ts';
import { fault, type Site, site } from './callout.ts';

const everything = ({ system, wires }: Site): Candidate[] => [
  candidateOf(system, []),
  ...singleCandidates(system, wires),
  ...swappedCandidates(system, wires),
  ...strayCandidates(system, wires),
];

describe('candidates', () => {
  test('each has an id of its own and a sentence, the same for the same fault', () => {
    const where = site('unvented-three-port');
    const all = everything(where);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    for (const { says } of all) expect(says).toMatch(/^[A-Z].*[^.]$/);
    const backwards = [...where.wires].reverse().map(([a, b]) => [b, a] as const);
    expect(everything({ ...where, wires: backwards }).map(({ id }) => id)).toEqual(all.map(({ id }) => id));
  });

  test('say what is wrong as a person would', () => {
    const where = site('three-port');
    const says = (...ids: string[]) => fault(where, ...ids).says;
    expect(says('pump: dead')).toBe('The pump does not run');
    expect(says('landed: boiler/SL strip/6 as boiler/SL strip/7')).toBe(
      'The wire from boiler SL to terminal 6 is landed on terminal 7',
    );
    expect(says('link: strip/1 strip/6')).toBe('A link too many joins terminal 1 and terminal 6');
    expect(says('wire: boiler/SL strip/6', 'pump: dead')).toBe(
      'The pump does not run, and the wire from boiler SL to terminal 6 is broken',
    );
  });

  test('two that cannot both be there are not put together', () => {
    const where = site('three-port');
    expect(() => fault(where, 'three-port: stuck at A', 'three-port: stuck at B')).toThrow();
    expect(() =>
      fault(where, 'wire: boiler/SL strip/6', 'landed: boiler/SL strip/6 as boiler/SL strip/7'),
    ).toThrow();
  });
});

describe('groups that nothing can tell apart', () => {
  const where = site('three-port');
  const all = everything(where);
  const groups = alikeGroups(where.bench, where.wires, all);
  const several = groups.filter((group) => group.length > 1);

  test('hold every candidate once', () => {
    expect(groups.flat().length).toBe(all.length);
    expect(new Set(groups.flat())).toEqual(new Set(all));
  });

  test('really read alike and behave alike, with any settings in any order, at any two terminals', () => {
    const { system, wires, bench } = where;
    expect(several.length).toBeGreaterThan(3);
    const instrument = fc.constantFrom('tester', 'volts', 'ohms', 'continuity');
    fc.assert(
      fc.property(
        fc.constantFrom(...several),
        fc.array(fc.nat(2 ** system.inputs.length - 1), { minLength: 1, maxLength: 4 }),
        fc.array(fc.tuple(instrument, fc.nat(system.terminals - 1), fc.nat(system.terminals - 1)), {
          minLength: 5,
          maxLength: 5,
        }),
        (group, history, readings) => {
          let setup = arrive(system, wires, {});
          let worlds = enterAll(bench, setup, group);
          for (const bits of history) {
            const done = operate(setup, settingsOf(system, bits));
            setup = done.next;
            worlds = followAll(bench, done, worlds);
          }
          const tests = [
            ...looks(setup),
            ...readings.map(([kind, a, b]) => ({
              kind: 'reads' as const,
              instrument: kind,
              between: [must(system.nodes[a]), must(system.nodes[b])] as const,
            })),
          ];
          for (const asked of tests) {
            const shown = worlds.map(({ stands }) =>
              stands.map((stand) => String(outcomeAt(setup, stand, asked))).sort(),
            );
            for (const one of shown) expect(one).toEqual(shown[0]);
          }
        },
      ),
      { seed, numRuns: 200 },
    );
  });

  test('a neutral on the other terminal of the same neutral is no fault at all', () => {
    const healthy = must(groups.find((group) => group.some(({ id }) => id === 'nothing')));
    expect(healthy.map(({ id }) => id)).toContain('landed: boiler/N strip/8 as boiler/N strip/9');
  });

  test('a blown fuse and a broken wire behind it are told apart, for the tester can stand between them', () => {
    const of = (id: string) => groups.find((group) => group.some((one) => one.id === id));
    expect(of('spur: fuse blown')).not.toBe(of('wire: spur/L strip/1'));
    expect(of('three-port: motor dead')).not.toBe(of('three-port: stuck at B'));
  });

  test('on the largest system the same circuit under two names is one group', () => {
    const big = site('six-zones');
    // Terminals 18 and 19 are linked: one neutral.
    const [a, b, c] = [
      'landed: pump/L strip/17 as pump/L strip/18',
      'landed: pump/L strip/17 as pump/L strip/19',
      'pump: dead',
    ].map((id) => fault(big, id));
    const found = alikeGroups(big.bench, big.wires, [must(a), must(c), must(b)]);
    expect(found.map((group) => group.map(({ id }) => id))).toEqual([[must(a).id, must(b).id], [must(c).id]]);
  });
});
