import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standsAnyhow } from '../../../src/engine/diagnose/anyhow.ts';
import { allCandidates } from '../../../src/engine/diagnose/callout.ts';
import { candidateOf } from '../../../src/engine/diagnose/candidate.ts';
import { arrive } from '../../../src/engine/diagnose/setup.ts';
import { lever, operate, swap } from '../../../src/engine/diagnose/visit.ts';
import { enter, follow, refuse } from '../../../src/engine/diagnose/world.ts';
import { positionOf, settingsOf } from '../../../src/engine/model/system.ts';
import { librarySystems } from '../support/library.ts';
import { must } from '../support/must.ts';
import { seed } from '../support/random.ts';
import { call, fault, site } from './callout.ts';

const places = ['three-port', 'overrun-three-port', 'gravity-two-port', 'two-two-ports-unvented'].map(
  (id) => {
    const where = site(id);
    return { ...where, candidates: allCandidates(where.system, where.wires) };
  },
);

describe('however the valves got there', () => {
  test('every way in which a system comes to stand, by any settings in any order, is among them', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...places),
        fc.nat(9999),
        fc.array(fc.tuple(fc.nat(9), fc.nat(9999)), { minLength: 1, maxLength: 6 }),
        ({ system, wires, bench, candidates }, pick, steps) => {
          const candidate = must(candidates[pick % candidates.length]);
          let setup = arrive(system, wires, {});
          let world = enter(bench, setup, candidate);
          for (const [what, detail] of steps) {
            const valve = must(system.parts[must(system.movers[detail % system.movers.length]).part]).id;
            const part = must(system.parts[detail % system.parts.length]).id;
            const settings = settingsOf(system, detail % 2 ** system.inputs.length);
            const done =
              what === 0 ? lever(setup, valve) : what === 1 ? swap(setup, part) : operate(setup, settings);
            setup = done.next;
            world = (done.newFuse ? refuse : follow)(bench, setup, world);
            const known = standsAnyhow(bench, setup, candidate).stands.map(({ standing }) => standing);
            for (const { standing } of world.stands)
              expect([candidate.id, known]).toEqual([candidate.id, expect.arrayContaining([standing])]);
          }
        },
      ),
      { seed, numRuns: 300 },
    );
  });

  test('a healthy mid-position valve, called by nothing, may rest anywhere that a call left it', () => {
    // It rests where it does because of where it came from (principle 2 of the engine): after heating it stays at A.
    const where = site('three-port');
    const setup = arrive(where.system, where.wires, { supply: 'on', ...call.none });
    const { stands } = standsAnyhow(where.bench, setup, candidateOf(where.system, []));
    const valve = must(where.system.parts.find(({ id }) => id === 'three-port'));
    const found = new Set(stands.map(({ place }) => positionOf(where.system, valve, place)));
    expect(found.size).toBeGreaterThan(1);
    expect(enter(where.bench, setup, candidateOf(where.system, [])).stands.length).toBe(1);
  });

  test('the fuse of no healthy system can have blown, whatever was set', () => {
    for (const { system, references } of librarySystems) {
      for (const { wires } of references) {
        const bench = site(system.spec.id).bench;
        const { stands } = standsAnyhow(bench, arrive(system, wires, {}), candidateOf(system, []));
        expect([system.spec.id, stands.some(({ blown }) => blown)]).toEqual([system.spec.id, false]);
      }
    }
  });

  test('a short that only a call brings about may have blown the fuse before it was called off again', () => {
    const where = must(places[3]);
    const rest = arrive(where.system, where.wires, { supply: 'on', ...call.none });
    const blown = (id: string) =>
      standsAnyhow(where.bench, rest, fault(where, id)).stands.map((stand) => stand.blown);
    expect(new Set(blown('landed: boiler/SL strip/7 as boiler/N strip/7'))).toEqual(new Set([true, false]));
    expect(new Set(blown('water-valve: motor dead'))).toEqual(new Set([false]));
  });
});
