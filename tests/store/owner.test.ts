import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { loadBackup, makeBackup } from '../../src/store/backup.ts';
import { owned, owner, ownName, setOwner } from '../../src/store/owner.ts';
import { freshDevice, openTab, trial } from './support.ts';

/** The storage of one tab. */
function giveSessionStorage(): void {
  const kept = new Map<string, string>();
  Object.assign(globalThis, {
    sessionStorage: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
    },
  });
}

beforeEach(freshDevice);
afterEach(() => {
  Reflect.deleteProperty(globalThis, 'sessionStorage');
});

describe('without an owner', () => {
  test('names are as they always were, so that nobody loses what is kept', () => {
    expect(owned('switched-live/wiring/1/three-port')).toBe('switched-live/wiring/1/three-port');
    giveSessionStorage();
    expect(owner()).toBe('');
    expect(owned('switched-live')).toBe('switched-live');
  });

  test('storage that is barred means none', () => {
    Object.defineProperty(globalThis, 'sessionStorage', {
      configurable: true,
      get: () => {
        throw new DOMException('not here', 'SecurityError');
      },
    });
    expect(owner()).toBe('');
    expect(setOwner('a')).toBe(false);
  });
});

test('Two learners on one machine do not see each other’s progress, and each finds their own again', async () => {
  giveSessionStorage();
  setOwner('one');
  const first = await openTab({ channel: undefined });
  const answer = trial();
  await first.add(answer);
  first.close();
  setOwner('two');
  const second = await openTab({ channel: undefined });
  expect(await second.trials()).toEqual([]);
  second.close();
  setOwner('one');
  expect(owned('switched-live')).toBe('switched-live~one');
  expect(await (await openTab({ channel: undefined })).trials()).toEqual([answer]);
  setOwner('');
  expect(await (await openTab({ channel: undefined })).trials()).toEqual([]);
});

describe('what a browser keeps in its plain storage', () => {
  test('is told apart by the owner, and read back by its plain name', () => {
    giveSessionStorage();
    setOwner('one');
    expect(ownName(owned('switched-live/bench/1/a'))).toBe('switched-live/bench/1/a');
    expect(ownName('switched-live/bench/1/a')).toBeUndefined();
    expect(ownName('switched-live/bench/1/a~two')).toBeUndefined();
    setOwner('');
    expect(ownName('switched-live/bench/1/a')).toBe('switched-live/bench/1/a');
    expect(ownName('switched-live/bench/1/a~one')).toBeUndefined();
  });

  test('goes into the backup of its owner alone, and comes back under whoever loads it', async () => {
    giveSessionStorage();
    const kept: Record<string, string> = {
      'switched-live/wiring/1/a': 'device',
      'switched-live/wiring/1/a~one': 'first',
      'switched-live/wiring/1/a~two': 'second',
    };
    const plain = (own: Record<string, string>) =>
      Object.assign(
        Object.create({
          getItem: (key: string) => own[key] ?? null,
          setItem: (key: string, value: string) => void Object.assign(own, { [key]: value }),
        }),
        own,
      ) as Storage;
    setOwner('one');
    const store = await openTab({ channel: undefined });
    const text = await makeBackup(store, plain(kept));
    expect(JSON.parse(text).progress.places).toEqual({ 'switched-live/wiring/1/a': 'first' });
    setOwner('three');
    expect(await loadBackup(store, plain(kept), text, 'b.json')).toMatchObject({ places: 1 });
    expect(kept['switched-live/wiring/1/a~three']).toBe('first');
    expect(kept['switched-live/wiring/1/a']).toBe('device');
  });
});
