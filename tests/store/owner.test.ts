import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { owned, owner, setOwner } from '../../src/store/owner.ts';
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
