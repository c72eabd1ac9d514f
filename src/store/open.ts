import type { KeptVisit } from '../course/callouts/kept-visit.ts';
import type { Sitting } from '../course/coursework/work.ts';
import type { Trial } from '../course/trial.ts';
import {
  CHOICES,
  type Change,
  choicesAfter,
  draftsAfter,
  sittingsAfter,
  tooMany,
  trialsAfter,
  visitsAfter,
} from './changes.ts';
import { makeConnection } from './connection.ts';
import type { Database } from './database.ts';
import { changesOf } from './merge.ts';
import { owned } from './owner.ts';
import { askToPersist } from './persist.ts';
import { isDraft, isSitting, isTrial, isVisit, readChoices } from './records.ts';
import type { Choices, Draft, KeptStore } from './store.ts';
import { inWords, type TroubleKind } from './troubles.ts';

/** What a store needs of the world around it. */
export interface Surroundings {
  /** Milliseconds since 1970. */
  readonly clock: () => number;
  /** Tells other tabs of a change, and is told by them; undefined where there is none. */
  readonly channel: BroadcastChannel | undefined;
  readonly storage: StorageManager | undefined;
  /** Milliseconds until what failed is tried again. */
  readonly retryAfter: number;
}

const around = (): Surroundings => ({
  clock: () => Date.now(),
  channel: typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(owned('switched-live')),
  storage: typeof navigator === 'undefined' ? undefined : navigator.storage,
  retryAfter: 30_000,
});

/** A clock that is behind by less than this is no trouble: two devices never agree. */
const SLACK = 3_600_000;

/** Plain data, free of what a page's framework wraps around it and the database would refuse. */
const plain = <T>(data: T): T => JSON.parse(JSON.stringify(data)) as T;

/**
 * A store of its own. Never rejects: see `Store`.
 * @param given surroundings that differ from the browser's own, for tests
 */
export async function makeStore(given: Partial<Surroundings> = {}): Promise<KeptStore> {
  const { clock, channel, storage, retryAfter } = { ...around(), ...given };
  const troubles = new Set<TroubleKind>();
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listener of [...listeners]) listener();
  };
  // What the database holds, as far as this tab knows.
  let trials: readonly Trial[] = [];
  let choices: Choices = {};
  let drafts: readonly Draft[] = [];
  let visits: readonly KeptVisit[] = [];
  let sittings: readonly Sitting[] = [];
  let latest = 0;
  let isRead = false;

  const connection = makeConnection(
    troubles,
    (wrote) => {
      // Whatever becomes of the database, what this tab has given it stays in sight.
      trials = trialsAfter(trials, wrote);
      choices = choicesAfter(choices, wrote);
      drafts = draftsAfter(drafts, wrote);
      visits = visitsAfter(visits, wrote);
      sittings = sittingsAfter(sittings, wrote);
      if (wrote.length > 0) channel?.postMessage('changed');
      tell();
    },
    retryAfter,
  );
  const { pending, flush } = connection;

  /** Does something with the database if it is open; whatever goes wrong then, what was read last stands. */
  const reading = async (what: (db: Database) => Promise<void>) => {
    await flush();
    const db = connection.database();
    try {
      if (db) await what(db);
    } catch {
      // Closed between two breaths; the next call opens it anew.
    }
  };
  const sound = (records: readonly unknown[]): readonly Trial[] => {
    const good = records.filter(isTrial);
    if (good.length < records.length && !troubles.has('damaged')) {
      troubles.add('damaged');
      tell();
    }
    return good;
  };
  const readAll = () =>
    reading(async (db) => {
      if (isRead) return;
      // Marked first: a change that comes while this reads unmarks it again.
      isRead = true;
      const [log, chosen, begun, visited, sat] = await Promise.all([
        db.getAll('trials'),
        db.get('choices', CHOICES),
        db.getAll('drafts'),
        db.getAll('visits'),
        db.getAll('sittings'),
      ]);
      troubles.delete('damaged');
      [trials, choices, drafts] = [sound(log), readChoices(chosen), begun.filter(isDraft)];
      visits = visitsAfter(visited.filter(isVisit), []);
      sittings = sittingsAfter(sat.filter(isSitting), []);
      latest = Math.max(latest, trials.at(-1)?.at ?? 0);
    });
  const change = async (...changes: readonly Change[]) => {
    connection.push(...changes);
    await flush();
    const db = connection.database();
    if (db) await askToPersist(db, storage);
    // What is held in memory is a change too.
    if (pending().length > 0) tell();
  };
  const all = () => trialsAfter(trials, pending());
  const allVisits = () => visitsAfter(visits, pending());
  const allSittings = () => sittingsAfter(sittings, pending());

  const heard = () => {
    isRead = false;
    void readAll().then(tell);
  };
  channel?.addEventListener('message', heard);
  await readAll();

  return {
    trials: async () => {
      await readAll();
      return all();
    },
    trialsOf: async (objective) => {
      let own: readonly Trial[] | undefined;
      if (!isRead)
        await reading(async (db) => {
          own = sound(await db.getAllFromIndex('trials', 'objective', objective));
        });
      return trialsAfter(own ?? trials, pending()).filter((trial) => trial.objective === objective);
    },
    add: async (...added) => {
      const right = added.map((trial) => {
        latest = trial.at > latest ? trial.at : latest + 1;
        return { ...plain(trial), at: latest };
      });
      await change(...right.map((trial): Change => ({ kind: 'trial', trial })));
    },
    choices: async () => {
      await readAll();
      return choicesAfter(choices, pending());
    },
    choose: (chosen) => change({ kind: 'choose', choices: plain(chosen) }),
    forget: (...names) => change({ kind: 'forget', names }),
    draft: async (place) => {
      await readAll();
      return draftsAfter(drafts, pending()).find((draft) => draft.place === place);
    },
    drafts: async () => {
      await readAll();
      return draftsAfter(drafts, pending());
    },
    keepDraft: (draft) => change({ kind: 'draft', draft: plain(draft) }),
    dropDraft: (place) => change({ kind: 'drop', place }),
    visit: async (callout) => {
      await readAll();
      return allVisits().findLast((visit) => visit.callout === callout);
    },
    visits: async () => {
      await readAll();
      return allVisits();
    },
    keepVisit: async (visit) => {
      await readAll();
      const kept: Change = { kind: 'visit', visit: plain(visit) };
      await change(kept, ...tooMany(visitsAfter(allVisits(), [kept])));
    },
    dropVisit: (id) => change({ kind: 'drop-visit', id }),
    sitting: async (id) => {
      await readAll();
      return allSittings().find((sitting) => sitting.id === id);
    },
    sittings: async () => {
      await readAll();
      return allSittings();
    },
    keepSitting: (sitting) => change({ kind: 'sitting', sitting: plain(sitting) }),
    dropSitting: (id) => change({ kind: 'drop-sitting', id }),
    merge: async (progress) => {
      await readAll();
      const here = {
        trials: all(),
        choices: choicesAfter(choices, pending()),
        drafts: draftsAfter(drafts, pending()),
        visits: allVisits(),
        sittings: allSittings(),
      };
      const missing = changesOf(here, plain(progress));
      const changes = [...missing, ...tooMany(visitsAfter(here.visits, missing))];
      latest = progress.trials.reduce((most, { at }) => Math.max(most, at), latest);
      await change(...changes);
      return changes.filter(({ kind }) => kind === 'trial').length;
    },
    clear: async () => {
      latest = 0;
      await change({ kind: 'clear' });
    },
    troubles: () => {
      const kinds = new Set(troubles);
      if (clock() < latest - SLACK) kinds.add('clock');
      return inWords(kinds);
    },
    onChange: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    now: () => Math.max(clock(), latest),
    close: () => {
      channel?.removeEventListener('message', heard);
      channel?.close();
      connection.close();
    },
  };
}

let shared: Promise<KeptStore> | undefined;

/** Opens the learner's progress on this device: one store for the whole page, however many pieces of it ask. Never rejects. */
export const openStore = (): Promise<KeptStore> => {
  shared ??= makeStore();
  return shared;
};
