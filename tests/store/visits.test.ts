import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import type { KeptVisit } from '../../src/course/callouts/kept-visit.ts';
import type { Act } from '../../src/engine/diagnose/act.ts';
import { parseBackup, writeBackup } from '../../src/files/backup.ts';
import { MOST_ACTS } from '../../src/files/visit.ts';
import { loadBackup, makeBackup } from '../../src/store/backup.ts';
import { openDatabase } from '../../src/store/database.ts';
import { version3 } from './fixtures/version-3.ts';
import { freshDevice, NOW, openTab } from './support.ts';

beforeEach(freshDevice);

const visit = (given: Partial<KeptVisit> = {}): KeptVisit => ({
  id: 'callout/three-port/1/1 1',
  callout: 'callout/three-port/1/1',
  acts: [{ do: 'isolate' }],
  wheels: [],
  at: NOW,
  took: 1000,
  done: false,
  ...given,
});

const watch = { waits: () => {}, outdated: () => {}, lost: () => {} };

describe('a visit', () => {
  test('that was left half way comes back after a reload', async () => {
    const tab = await openTab({ channel: undefined });
    await tab.keepVisit(visit({ acts: [{ do: 'isolate' }, { do: 'lock' }] }));
    tab.close();
    const again = await openTab({ channel: undefined });
    expect((await again.visit('callout/three-port/1/1'))?.acts).toEqual([{ do: 'isolate' }, { do: 'lock' }]);
    expect(await again.visit('callout/three-port/2/1')).toBeUndefined();
  });

  test('takes the place of what was kept of it before, and the latest one to a callout is the one that comes back', async () => {
    const tab = await openTab();
    await tab.keepVisit(visit({ id: 'a 1', callout: 'a', done: true, at: NOW }));
    await tab.keepVisit(visit({ id: 'a 2', callout: 'a', at: NOW + 1, acts: [] }));
    await tab.keepVisit(visit({ id: 'a 2', callout: 'a', at: NOW + 2 }));
    expect((await tab.visit('a'))?.id).toBe('a 2');
    expect((await tab.visits()).map(({ id, at }) => [id, at])).toEqual([
      ['a 1', NOW],
      ['a 2', NOW + 2],
    ]);
    await tab.dropVisit('a 2');
    expect((await tab.visit('a'))?.id).toBe('a 1');
  });

  test('that is over goes once 200 later ones are over, and one that is not over stays', async () => {
    const tab = await openTab();
    await tab.keepVisit(visit({ id: 'open', at: NOW - 1 }));
    for (let k = 0; k <= 200; k++) await tab.keepVisit(visit({ id: `over ${k}`, at: NOW + k, done: true }));
    const ids = (await tab.visits()).map(({ id }) => id);
    expect(ids).toHaveLength(201);
    expect(ids.slice(0, 2)).toEqual(['open', 'over 1']);
  });

  test('that another hand has spoilt is left out, and the others are there', async () => {
    const db = await openDatabase(watch);
    for (const one of version3.visits) await db.put('visits', one);
    await db.put('visits', {
      id: 'spoilt',
      callout: 'a',
      acts: 'none',
      wheels: [],
      at: 1,
      took: 1,
      done: true,
    });
    await db.put('visits', {
      id: 'no acts',
      callout: 'a',
      acts: [7],
      wheels: [],
      at: 1,
      took: 1,
      done: true,
    });
    db.close();
    expect(await (await openTab()).visits()).toEqual(version3.visits);
  });

  test('is forgotten with everything else', async () => {
    const tab = await openTab();
    await tab.keepVisit(visit());
    await tab.clear();
    expect(await tab.visits()).toEqual([]);
  });

  test('is kept in memory while storage is barred', async () => {
    Object.assign(globalThis, { indexedDB: undefined });
    const tab = await openTab();
    await tab.keepVisit(visit());
    expect(await tab.visits()).toEqual([visit()]);
    expect(tab.troubles().map(({ kind }) => kind)).toEqual(['blocked']);
  });
});

describe('in a backup', () => {
  const progress = { trials: [], choices: {}, drafts: [], places: {} };

  test('visits move to another device, each once, and the later state of one counts', async () => {
    const old = await openTab({ channel: undefined });
    await old.keepVisit(visit({ id: 'mine', at: NOW }));
    await old.keepVisit(visit({ id: 'both', at: NOW + 5, took: 5 }));
    const text = await makeBackup(old, undefined);
    old.close();
    freshDevice();
    const fresh = await openTab({ channel: undefined });
    await fresh.keepVisit(visit({ id: 'both', at: NOW + 9, took: 9 }));
    await loadBackup(fresh, undefined, text, 'b.json');
    await loadBackup(fresh, undefined, text, 'b.json');
    expect((await fresh.visits()).map(({ id, took }) => [id, took])).toEqual([
      ['mine', 1000],
      ['both', 9],
    ]);
  });

  test('of a site that had no callouts yet, everything else is there', async () => {
    const tab = await openTab();
    await tab.keepVisit(visit());
    await loadBackup(tab, undefined, writeBackup({ ...progress, choices: { route: 'r' } }, NOW), 'b.json');
    expect(await tab.choices()).toEqual({ route: 'r' });
    expect(await tab.visits()).toEqual([visit()]);
  });

  const terminal = fc.stringMatching(/^[a-z-]{1,9}\/[A-Z0-9-]{1,9}$/);
  const wire = fc.tuple(terminal, terminal);
  const part = fc.stringMatching(/^[a-z-]{1,9}$/);
  const acts: fc.Arbitrary<Act> = fc.oneof(
    fc.record({ do: fc.constant('operate'), settings: fc.dictionary(part, part, { noNullPrototype: true }) }),
    fc.record({ do: fc.constant('identify'), supply: part }),
    fc.record({ do: fc.constantFrom('isolate', 'lock', 'prove', 'reset') }),
    fc.record({ do: fc.constant('dead-test'), pair: fc.constantFrom('L-N', 'L-E', 'N-E') }),
    fc.record({ do: fc.constantFrom('open', 'close', 'swap'), part }),
    fc.record({ do: fc.constantFrom('lift', 'land'), wire }),
    fc.record({ do: fc.constantFrom('bridge', 'unbridge'), between: wire }),
    fc.record({ do: fc.constant('lever'), valve: part }),
    fc.record({
      do: fc.constant('test'),
      test: fc.oneof(
        fc.record({ kind: fc.constantFrom('works', 'warms', 'stands'), part }),
        fc.record({
          kind: fc.constant('reads'),
          instrument: fc.constantFrom('tester', 'volts', 'continuity', 'ohms'),
          between: wire,
        }),
      ),
    }),
  ) as fc.Arbitrary<Act>;

  test('every act of a visit is read as it was written', () => {
    fc.assert(
      fc.property(fc.array(acts, { maxLength: 20 }), (some) => {
        const visits = [visit({ acts: some })];
        expect(parseBackup(writeBackup({ ...progress, visits }, NOW), 'b.json').visits).toEqual(visits);
      }),
    );
  });

  test.each([
    ['an act that nobody does', [{ do: 'guess' }], 'progress.visits[0].acts[0].do'],
    [
      'an act without its part',
      [{ do: 'open' }],
      'progress.visits[0].acts[0].part: expected the id of a part',
    ],
    ['a wire with one end', [{ do: 'lift', wire: ['a/1'] }], 'progress.visits[0].acts[0].wire'],
    [
      'a reading by an instrument that there is not',
      [{ do: 'test', test: { kind: 'reads', instrument: 'ammeter', between: ['a/1', 'a/2'] } }],
      'progress.visits[0].acts[0].test.instrument: expected one of tester, volts, continuity, ohms',
    ],
    [
      'more acts than anybody does',
      new Array(MOST_ACTS + 1).fill({ do: 'lock' }),
      `at most ${MOST_ACTS} acts`,
    ],
  ])('%s is refused, with its place', (_, some, says) => {
    const text = writeBackup({ ...progress, visits: [visit({ acts: some as Act[] })] }, NOW);
    expect(() => parseBackup(text, 'b.json')).toThrow(says);
  });
});
