import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { openDB } from 'idb';
import { beforeEach, describe, expect, onTestFinished, test } from 'vitest';
import { NAME, openDatabase } from '../../src/store/database.ts';
import { VERSION } from '../../src/store/migrations/index.ts';
import type { KeptStore } from '../../src/store/store.ts';
import { freshDevice, NOW, openTab, trial, until } from './support.ts';

beforeEach(freshDevice);

const kinds = (store: KeptStore) => store.troubles().map(({ kind }) => kind);

/** What a learner would see: their own answer, choice and begun answer. */
async function seesAll(store: KeptStore): Promise<void> {
  const log = [trial(), trial({ at: NOW + 1 })];
  await store.add(...log);
  await store.choose({ route: 'unvented' });
  await store.keepDraft({ place: 'a', item: 'x', answer: { kind: 'set' }, at: NOW });
  expect(await store.trials()).toEqual(log);
  expect(await store.trialsOf('follow-the-call')).toEqual(log);
  expect(await store.choices()).toEqual({ route: 'unvented' });
  expect(await store.draft('a')).toMatchObject({ item: 'x' });
}

/** And that it is on the device once the trouble is over. */
async function keepsAll(store: KeptStore): Promise<void> {
  await until(() => kinds(store).length === 0);
  store.close();
  const again = await openTab();
  expect(await again.trials()).toHaveLength(2);
  expect(await again.choices()).toEqual({ route: 'unvented' });
  expect(await again.draft('a')).toMatchObject({ item: 'x' });
}

const noStorage: [string, () => void][] = [
  ['has none', () => Object.assign(globalThis, { indexedDB: undefined })],
  [
    'throws when it is opened',
    () =>
      Object.assign(globalThis, {
        indexedDB: {
          open: () => {
            throw new DOMException('not here', 'SecurityError');
          },
        },
      }),
  ],
];

describe('where the browser bars its storage', () => {
  test.each(noStorage)('because it %s, all is held in memory, said so, and kept later', async (_, bar) => {
    const sound = globalThis.indexedDB;
    bar();
    onTestFinished(freshDevice);
    const store = await openTab();
    expect(kinds(store)).toEqual(['blocked']);
    await seesAll(store);
    globalThis.indexedDB = sound;
    await keepsAll(store);
  });
});

test('On a full device all is held in memory, said so, and kept once there is room', async () => {
  const store = await openTab();
  const { put } = IDBObjectStore.prototype;
  const free = () => {
    IDBObjectStore.prototype.put = put;
  };
  onTestFinished(free);
  IDBObjectStore.prototype.put = () => {
    throw new DOMException('no room', 'QuotaExceededError');
  };
  await seesAll(store);
  expect(kinds(store)).toEqual(['full']);
  free();
  await keepsAll(store);
});

test('A database of a newer site is left alone, and all is held in memory', async () => {
  const newer = await openDB(NAME, VERSION + 1, { upgrade: (db) => void db.createObjectStore('later') });
  newer.close();
  const store = await openTab();
  expect(kinds(store)).toEqual(['newer']);
  await seesAll(store);
  expect(kinds(store)).toEqual(['newer']);
  const after = await openDB(NAME);
  expect([...after.objectStoreNames]).toEqual(['later']);
  after.close();
});

test('A tab that is older than another one makes way, keeps what it has in memory, and says so', async () => {
  const store = await openTab();
  await store.add(trial());
  const newer = await openDB(NAME, VERSION + 1);
  onTestFinished(() => newer.close());
  expect(newer.version).toBe(VERSION + 1);
  await until(() => kinds(store).includes('newer'));
  await store.add(trial());
  expect(await store.trials()).toHaveLength(2);
});

test('A tab that an older one holds up does not hang: it holds all in memory until the other is closed', async () => {
  // An older site that does not make way.
  const older = await new Promise<IDBDatabase>((done) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore('trials', { keyPath: ['at', 'objective', 'item', 'attempt'] });
      asked.result.createObjectStore('choices');
    };
    asked.onsuccess = () => done(asked.result);
  });
  const store = await openTab();
  expect(kinds(store)).toEqual(['waiting']);
  await seesAll(store);
  older.close();
  await keepsAll(store);
});

test('A connection that the browser drops is made anew without a word', async () => {
  let opened: IDBDatabase | undefined;
  const { open } = IDBFactory.prototype;
  onTestFinished(() => {
    IDBFactory.prototype.open = open;
  });
  IDBFactory.prototype.open = function (this: IDBFactory, ...given: Parameters<typeof open>) {
    const asked = open.apply(this, given);
    asked.addEventListener('success', () => {
      opened = asked.result as unknown as IDBDatabase;
    });
    return asked;
  };
  const store = await openTab();
  opened?.close();
  await store.add(trial());
  expect(kinds(store)).toEqual([]);
  expect(await store.trials()).toHaveLength(1);
});

test('Damaged records are passed over and stay where they are; the rest is used', async () => {
  const watch = { waits: () => {}, outdated: () => {}, lost: () => {} };
  const db = await openDatabase(watch);
  const good = trial();
  await db.put('trials', good);
  for (const spoilt of [
    { ...trial(), right: 'yes' },
    { ...trial(), at: Number.POSITIVE_INFINITY },
    { at: 1, objective: 'a', item: 'b', attempt: 1 },
    { ...trial(), mode: '__proto__' },
  ])
    await db.put('trials', spoilt);
  await db.put('choices', { route: 7, assessment: 'soon', help: 'off', last: 'x' }, 'choices');
  await db.put('drafts', { place: 'a', at: 'now' });
  db.close();

  const store = await openTab();
  expect(await store.trials()).toEqual([good]);
  expect(kinds(store)).toEqual(['damaged']);
  expect(await store.choices()).toEqual({ help: 'off' });
  expect(await store.drafts()).toEqual([]);
  await store.add(trial({ at: NOW + 1 }));
  expect(await store.trials()).toHaveLength(2);
  store.close();
  const after = await openDatabase(watch);
  expect(await after.count('trials')).toBe(6);
  after.close();
});

test('Each trouble says in words what holds and what to do', async () => {
  Object.assign(globalThis, { indexedDB: undefined });
  onTestFinished(freshDevice);
  const store = await openTab({ clock: () => 5 });
  await store.add(trial());
  expect(kinds(store)).toEqual(['blocked', 'clock']);
  for (const { says, todo } of store.troubles()) {
    expect(says).toMatch(/^[A-Z].+\.$/);
    expect(todo).toMatch(/^[A-Z].+\.$/);
  }
});
