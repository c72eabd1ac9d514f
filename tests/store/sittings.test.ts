import { beforeEach, describe, expect, test } from 'vitest';
import type { Sitting, Work } from '../../src/course/coursework/work.ts';
import { parseBackup, writeBackup } from '../../src/files/backup.ts';
import { loadBackup, makeBackup } from '../../src/store/backup.ts';
import { openDatabase } from '../../src/store/database.ts';
import { unitedSitting } from '../../src/store/sittings.ts';
import { version4 } from './fixtures/version-4.ts';
import { freshDevice, NOW, openTab } from './support.ts';

beforeEach(freshDevice);

const [kept] = version4.sittings as unknown as Sitting[];
const work = (given: Partial<Work>): Work => ({ ...(kept?.work[0] as Work), ...given }) as Work;
const sitting = (given: Partial<Sitting> = {}): Sitting => ({ ...(kept as Sitting), work: [], ...given });
const momentsOf = (one: Sitting | undefined) => one?.work.map(({ at }) => at);
const watch = { waits: () => {}, outdated: () => {}, lost: () => {} };

describe('a sitting', () => {
  test('comes back after a reload, by the coursework and the learner', async () => {
    const tab = await openTab({ channel: undefined });
    await tab.keepSitting(kept as Sitting);
    tab.close();
    const again = await openTab({ channel: undefined });
    expect(await again.sitting('controls-basics STUDENT-07')).toEqual(kept);
    expect(await again.sitting('controls-basics STUDENT-08')).toBeUndefined();
    expect(await again.sittings()).toEqual([kept]);
  });

  test('keeps the work of two tabs that know nothing of each other, each piece once, in its order', async () => {
    const [one, two] = [await openTab({ channel: undefined }), await openTab({ channel: undefined })];
    const [first, second, third] = [1, 2, 3].map((k) => work({ attempt: k, at: NOW + k }));
    await one.keepSitting(sitting({ at: NOW + 1, work: [first as Work] }));
    await two.keepSitting(sitting({ at: NOW + 3, work: [third as Work] }));
    await one.keepSitting(sitting({ at: NOW + 2, work: [first as Work, second as Work] }));
    const fresh = await openTab({ channel: undefined });
    expect(momentsOf(await fresh.sitting(sitting().id))).toEqual([NOW + 1, NOW + 2, NOW + 3]);
  });

  test('that is dropped is gone, and begins anew', async () => {
    const tab = await openTab();
    await tab.keepSitting(kept as Sitting);
    await tab.dropSitting((kept as Sitting).id);
    expect(await tab.sittings()).toEqual([]);
    await tab.keepSitting(sitting({ at: NOW }));
    expect(momentsOf(await tab.sitting(sitting().id))).toEqual([]);
    await tab.clear();
    expect(await tab.sittings()).toEqual([]);
  });

  test('that another hand has spoilt is left out, and the others are there', async () => {
    const db = await openDatabase(watch);
    await db.put('sittings', kept);
    const spoilt = [{ work: 'none' }, { work: [7] }, { learner: {} }, { coursework: 'x' }, { at: 'now' }];
    for (const [k, one] of spoilt.entries()) await db.put('sittings', { ...kept, ...one, id: `spoilt ${k}` });
    db.close();
    expect(await (await openTab()).sittings()).toEqual([kept]);
  });

  test('is kept in memory while storage is barred', async () => {
    Object.assign(globalThis, { indexedDB: undefined });
    const tab = await openTab();
    await tab.keepSitting(kept as Sitting);
    expect(await tab.sittings()).toEqual([kept]);
  });
});

test('Two states of a sitting come to the same whichever is named first', () => {
  const one = sitting({ at: 5, begun: 3, work: [work({ at: 1 }), work({ at: 2 })] });
  const two = sitting({
    at: 9,
    begun: 4,
    learner: { code: 'X1', name: 'N' },
    work: [work({ at: 2 }), work({ at: 0 })],
  });
  const both = unitedSitting(one, two);
  expect(unitedSitting(two, one)).toEqual(both);
  expect(both).toMatchObject({ at: 9, begun: 3, learner: { name: 'N' } });
  expect(momentsOf(both)).toEqual([0, 1, 2]);
});

describe('in a backup', () => {
  const progress = { trials: [], choices: {}, drafts: [], places: {} };

  test('sittings move to another device, and the work of both is there once', async () => {
    const old = await openTab({ channel: undefined });
    await old.keepSitting(sitting({ at: NOW + 5, work: [work({ at: 1 }), work({ at: 2 })] }));
    const text = await makeBackup(old, undefined);
    old.close();
    freshDevice();
    const fresh = await openTab({ channel: undefined });
    await fresh.keepSitting(sitting({ at: NOW + 9, work: [work({ at: 2 }), work({ at: 3 })] }));
    await loadBackup(fresh, undefined, text, 'b.json');
    await loadBackup(fresh, undefined, text, 'b.json');
    expect((await fresh.sittings()).map((one) => [one.at, momentsOf(one)])).toEqual([[NOW + 9, [1, 2, 3]]]);
  });

  test('of a site that had no courseworks yet, what is here stays', async () => {
    const tab = await openTab();
    await tab.keepSitting(kept as Sitting);
    await loadBackup(tab, undefined, writeBackup({ ...progress, choices: { route: 'r' } }, NOW), 'b.json');
    expect(await tab.choices()).toEqual({ route: 'r' });
    expect(await tab.sittings()).toEqual([kept]);
  });

  test('every kind of work is read as it was written', () => {
    const sittings = [kept as Sitting];
    expect(parseBackup(writeBackup({ ...progress, sittings }, NOW), 'b.json').sittings).toEqual(sittings);
  });

  test('work that is none is refused, with its place', () => {
    const sittings = [sitting({ work: [{ ...work({}), kind: 'guess' } as unknown as Work] })];
    expect(() => parseBackup(writeBackup({ ...progress, sittings }, NOW), 'b.json')).toThrow(
      'progress.sittings[0].work[0].kind: expected',
    );
  });
});
