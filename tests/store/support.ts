import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { onTestFinished } from 'vitest';
import type { Trial } from '../../src/course/trial.ts';
import { makeStore, type Surroundings } from '../../src/store/open.ts';
import type { KeptStore } from '../../src/store/store.ts';

export const HOUR = 3_600_000;
/** A Monday in 2026. */
export const NOW = 1_790_000_000_000;

/** Whatever the browser's storage is in a test, the next test has a sound and empty one. */
export function freshDevice(): void {
  globalThis.indexedDB = new IDBFactory();
}

let seed = 0;
export const trial = (given: Partial<Trial> = {}): Trial => ({
  at: NOW,
  objective: 'follow-the-call',
  item: `path-order/three-port/${++seed}/1`,
  method: 'path-order',
  right: true,
  attempt: 1,
  hints: 0,
  shown: 0,
  took: 20_000,
  mode: 'lesson',
  ...given,
});

/** A tab of the site: its store, closed when the test ends. */
export async function openTab(given: Partial<Surroundings> = {}): Promise<KeptStore> {
  const store = await makeStore({ clock: () => NOW, storage: undefined, retryAfter: 20, ...given });
  onTestFinished(() => store.close());
  return store;
}

/** Waits until something holds; the test times out when it never does. */
export async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await holds())) await new Promise((done) => setTimeout(done, 5));
}
