import { beforeEach, expect, test } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import { migrations, VERSION } from '../../src/store/migrations/index.ts';
import { type Fixture, fixtures } from './fixtures/index.ts';
import { freshDevice, openTab } from './support.ts';

beforeEach(freshDevice);

const watch = { waits: () => {}, outdated: () => {}, lost: () => {} };

/** Leaves on the device what a site of an earlier version would have left. */
async function leave(version: number, { trials, choices, drafts, visits, sittings }: Fixture): Promise<void> {
  const db = await openDatabase(watch, version);
  for (const trial of trials) await db.put('trials', trial);
  await db.put('choices', choices, 'choices');
  for (const draft of drafts ?? []) await db.put('drafts', draft);
  for (const visit of visits ?? []) await db.put('visits', visit);
  for (const sitting of sittings ?? []) await db.put('sittings', sitting);
  db.close();
}

test.each(Object.entries(fixtures))(
  'A learner who comes back from version %s finds everything, and nothing is in trouble',
  async (version, fixture) => {
    await leave(Number(version), fixture);
    const store = await openTab();
    expect(await store.trials()).toEqual(fixture.trials);
    expect(await store.choices()).toEqual(fixture.choices);
    expect(await store.drafts()).toEqual(fixture.drafts ?? []);
    expect(await store.visits()).toEqual(fixture.visits ?? []);
    expect(await store.sittings()).toEqual(fixture.sittings ?? []);
    expect(await store.trialsOf('isolate-safely')).toEqual(fixture.trials.slice(0, 2));
    expect(store.troubles()).toEqual([]);
  },
);

test('Every version has a fixture, so that none can be added without one', () => {
  expect(Object.keys(fixtures).map(Number)).toEqual(migrations.map(({ version }) => version));
});

test('The versions count from 1 without a gap, and the last one is the present one', async () => {
  expect(migrations.map(({ version }) => version)).toEqual(migrations.map((_, k) => k + 1));
  const db = await openDatabase(watch);
  expect(db.version).toBe(VERSION);
  db.close();
});

test('The last fixture holds something for every store of the present version', async () => {
  const db = await openDatabase(watch);
  expect(Object.keys(fixtures[VERSION] ?? {}).sort()).toEqual([...db.objectStoreNames].sort());
  db.close();
});
