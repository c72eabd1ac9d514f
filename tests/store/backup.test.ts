import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Mode, Trial } from '../../src/course/trial.ts';
import {
  type Backup,
  MOST_BACKUP_BYTES,
  MOST_TRIALS,
  parseBackup,
  writeBackup,
} from '../../src/files/backup.ts';
import { loadBackup, makeBackup } from '../../src/store/backup.ts';
import { freshDevice, NOW, openTab, trial } from './support.ts';

beforeEach(freshDevice);

/** The browser's plain storage, as far as a backup needs it. */
function plainStorage(kept: Readonly<Record<string, string>> = {}): Storage {
  const own = Object.assign(
    Object.create({
      getItem: (key: string) => own[key] ?? null,
      setItem: (key: string, value: string) => {
        own[key] = value;
      },
    }),
    kept,
  ) as Record<string, string>;
  return own as unknown as Storage;
}

const time = fc.integer({ min: 0, max: 8.64e15 });
const name = fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' });
const count = fc.nat({ max: 9 });
const trials: fc.Arbitrary<Trial[]> = fc.array(
  fc.record({
    at: time,
    objective: name,
    item: name,
    method: name,
    right: fc.boolean(),
    attempt: count,
    hints: count,
    shown: count,
    took: fc.double({ min: 0, max: 1e7, noNaN: true }).map((ms) => ms + 0),
    mode: fc.constantFrom<Mode>('lesson', 'practice', 'revision', 'test-out', 'before', 'after', 'callout'),
  }),
  { maxLength: 20 },
);
const backups: fc.Arbitrary<Backup> = fc.record({
  trials,
  choices: fc.record(
    {
      route: name,
      assessment: fc.constant('2027-03-31'),
      help: fc.constant('off' as const),
      last: fc.record({ path: name, title: name, at: time }),
    },
    { requiredKeys: [] },
  ),
  drafts: fc.array(fc.record({ place: name, item: name, at: time, answer: fc.jsonValue({ maxDepth: 3 }) }), {
    maxLength: 5,
  }),
  places: fc.dictionary(
    fc.oneof(
      fc.stringMatching(/^switched-live\/(wiring|bench)\/1\/[a-z-]{1,12}$/),
      fc.constant('switched-live/bench-open'),
    ),
    fc.string(),
    { noNullPrototype: true },
  ),
}) as fc.Arbitrary<Backup>;

test('A backup written and read again is the same backup', () => {
  fc.assert(
    fc.property(backups, time, (backup, made) => {
      const text = writeBackup(backup, made);
      expect(parseBackup(text, 'b.json')).toEqual(JSON.parse(JSON.stringify(backup)));
    }),
  );
});

test('A backup with one letter changed is refused in one line, or it still says the same', () => {
  fc.assert(
    fc.property(backups, fc.nat(), fc.constantFrom('0', '7', 'x', '"', '}', ' '), (backup, where, letter) => {
      const text = writeBackup(backup, NOW);
      const at = where % text.length;
      const spoilt = text.slice(0, at) + letter + text.slice(at + 1);
      try {
        expect(parseBackup(spoilt, 'b.json')).toEqual(JSON.parse(JSON.stringify(backup)));
      } catch (problem) {
        expect((problem as Error).name).toBe('FileError');
        expect((problem as Error).message).toMatch(/^b\.json: .*expected .*, found .*$/);
      }
    }),
  );
});

test('A learner’s progress moves to another device whole: answers, choices, answers begun, wirings and benches', async () => {
  const old = await openTab({ channel: undefined });
  await old.add(trial(), trial({ at: NOW + 1, right: false }));
  await old.choose({ route: 'unvented', assessment: '2027-03-31' });
  await old.keepDraft({ place: 'a', item: 'x', answer: { kind: 'set' }, at: NOW });
  const places = {
    'switched-live/wiring/1/three-port': '{"job":"three-port","wires":[]}',
    'switched-live/bench/1/k1': '{"bench":1}',
    'switched-live/bench-open': 'k1',
  };
  const text = await makeBackup(old, plainStorage({ ...places, theme: 'dark', 'other-site': 'x' }));
  const before = [await old.trials(), await old.choices(), await old.drafts()];
  old.close();

  freshDevice();
  const fresh = await openTab({ channel: undefined });
  const plain = plainStorage();
  expect(await loadBackup(fresh, plain, text, 'b.json')).toEqual({ answers: 2, places: 3 });
  expect([await fresh.trials(), await fresh.choices(), await fresh.drafts()]).toEqual(before);
  expect({ ...plain }).toEqual(places);
  expect(await loadBackup(fresh, plain, text, 'b.json')).toEqual({ answers: 0, places: 0 });
  expect(await fresh.trials()).toHaveLength(2);
});

test('A backup adds to what is here and overwrites nothing, and answers keep their own time', async () => {
  const mine = trial({ at: NOW });
  const shared = trial({ at: NOW - 50 });
  const theirs = trial({ at: NOW - 100 });
  const store = await openTab();
  await store.add(shared, mine);
  await store.choose({ route: 'mine', last: { path: '/a/', title: 'A', at: NOW - 9 } });
  const last = { path: '/b/', title: 'B', at: NOW - 3 };
  const text = writeBackup(
    {
      trials: [shared, theirs],
      choices: { route: 'theirs', help: 'off', last },
      drafts: [],
      places: { 'switched-live/bench-open': 'b' },
    },
    NOW,
  );
  const plain = plainStorage({ 'switched-live/bench-open': 'a' });
  expect(await loadBackup(store, plain, text, 'b.json')).toEqual({ answers: 1, places: 0 });
  expect(await store.trials()).toEqual([theirs, shared, mine]);
  expect(await store.choices()).toEqual({ route: 'mine', help: 'off', last });
  expect(plain.getItem('switched-live/bench-open')).toBe('a');
});

test('A backup can be made while storage is barred, and holds what memory does', async () => {
  Object.assign(globalThis, { indexedDB: undefined });
  const store = await openTab();
  const kept = trial();
  await store.add(kept);
  const barred = new Proxy({} as Storage, {
    ownKeys: () => {
      throw new DOMException('not here', 'SecurityError');
    },
  });
  const text = await makeBackup(store, barred);
  expect(parseBackup(text, 'b.json')).toMatchObject({ trials: [kept], places: {} });
});

describe('a file that is no sound backup is refused, and nothing changes', () => {
  const sound = { trials: [trial()], choices: {}, drafts: [], places: {} };
  const text = writeBackup(sound, NOW);
  const data = JSON.parse(text) as { backup: number; progress: typeof sound };
  const changed = (progress: object) => JSON.stringify({ ...data, progress: { ...sound, ...progress } });
  test.each([
    ['nothing', '', 'expected JSON text, found nothing'],
    ['a list', '[]', 'expected a backup'],
    ['half a file', text.slice(0, 90), 'line 1'],
    [
      'a later version',
      JSON.stringify({ ...data, backup: 2 }),
      'backup: expected 1, the version of the format, found 2',
    ],
    ['an answer put right by hand', text.replace('"right":true', '"right":false'), 'checksum'],
    [
      'an answer without a time',
      changed({ trials: [{ ...sound.trials[0], at: undefined }] }),
      'progress.trials[0].at',
    ],
    ['another site’s data', changed({ places: { theme: 'dark' } }), 'progress.places'],
    ['a key of its own', changed({ extra: 1 }), 'extra'],
    [
      'an answer begun that is far too deep',
      changed({ drafts: [{ place: 'a', item: 'b', at: 1, answer: 'deep' }] }).replace(
        '"deep"',
        `${'['.repeat(5000)}${']'.repeat(5000)}`,
      ),
      'progress.drafts[0].answer',
    ],
    ['too many answers', changed({ trials: new Array(MOST_TRIALS + 1).fill(1) }), `at most ${MOST_TRIALS}`],
    ['more than 20 MB', ' '.repeat(MOST_BACKUP_BYTES + 1), 'at most 20 MB'],
    [
      'names that a program must mind',
      changed({ places: JSON.parse('{"__proto__": {"polluted": true}}') }),
      'checksum',
    ],
  ])('%s', async (_, spoilt, says) => {
    const store = await openTab();
    const plain = plainStorage();
    await expect(loadBackup(store, plain, spoilt, 'b.json')).rejects.toThrow(says);
    await expect(loadBackup(store, plain, spoilt, 'b.json')).rejects.toThrow(/^b\.json/);
    expect(await store.trials()).toEqual([]);
    expect(Object.keys(plain)).toEqual([]);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});
