import { type Change, write } from './changes.ts';
import { type Database, openDatabase, STORES } from './database.ts';
import { type TroubleKind, troubleOf } from './troubles.ts';

/** Troubles that the database itself gives; each ends when a change gets through. */
const STORAGE_TROUBLES: readonly TroubleKind[] = ['blocked', 'full', 'newer', 'waiting'];

/** The way to the database: changes wait here, in their order, until it takes them. */
export interface Connection {
  /** Changes that the database has not got. */
  readonly pending: () => readonly Change[];
  readonly push: (...changes: readonly Change[]) => void;
  /** Opens the database if need be and writes what waits. Never rejects, and never waits for another tab. */
  readonly flush: () => Promise<void>;
  /** The database while it is open. */
  readonly database: () => Database | undefined;
  readonly close: () => void;
}

/** Makes all changes or none. Rejects with the reason. */
async function writeAll(db: Database, changes: readonly Change[]): Promise<void> {
  const writing = db.transaction(STORES, 'readwrite');
  try {
    for (const change of changes) await write(writing, change);
  } catch (problem) {
    await writing.done.catch(() => undefined);
    throw writing.error ?? problem;
  }
  await writing.done;
}

/**
 * @param troubles the kinds of trouble there are: kept up to date here
 * @param changed called when a trouble comes or goes, with the changes that the database got
 * @param retryAfter milliseconds until what failed is tried again
 */
export function makeConnection(
  troubles: Set<TroubleKind>,
  changed: (wrote: readonly Change[]) => void,
  retryAfter: number,
): Connection {
  const pending: Change[] = [];
  let db: Database | undefined;
  let isOpening = false;
  let isClosed = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let working: Promise<void> = Promise.resolve();

  const retryLater = () => {
    clearTimeout(timer);
    if (!isClosed) timer = setTimeout(() => void flush(), retryAfter);
  };
  const fail = (kind: TroubleKind) => {
    retryLater();
    // The last word counts: a device that was blocked may be full by now.
    for (const other of STORAGE_TROUBLES) if (other !== kind) troubles.delete(other);
    if (troubles.has(kind)) return;
    troubles.add(kind);
    changed([]);
  };
  const recover = (): boolean => {
    clearTimeout(timer);
    return STORAGE_TROUBLES.filter((kind) => troubles.delete(kind)).length > 0;
  };

  /** Comes back when the database is open, or it is plain that it cannot be for now. */
  const open = () =>
    new Promise<void>((done) => {
      isOpening = true;
      let waited = false;
      const lose = () => {
        db = undefined;
        retryLater();
      };
      openDatabase({
        waits: () => {
          waited = true;
          fail('waiting');
          done();
        },
        outdated: () => {
          db = undefined;
          fail('newer');
        },
        lost: lose,
      })
        .then((opened) => {
          if (isClosed) opened.close();
          else db = opened;
        })
        .catch((problem) => fail(troubleOf(problem)))
        .finally(() => {
          isOpening = false;
          done();
          if (waited && db) void flush();
        });
    });

  const work = async (isSecondGo = false): Promise<void> => {
    if (!db && !isOpening && !isClosed) await open();
    if (!db) return;
    const batch = [...pending];
    try {
      if (batch.length > 0) await writeAll(db, batch);
    } catch (problem) {
      // A connection that was closed under our feet is opened anew.
      if (!isSecondGo && problem instanceof DOMException && problem.name === 'InvalidStateError') {
        db = undefined;
        return work(true);
      }
      return fail(troubleOf(problem));
    }
    pending.splice(0, batch.length);
    if (recover() || batch.length > 0) changed(batch);
  };
  const flush = () => {
    working = working.then(() => work());
    return working;
  };

  return {
    pending: () => pending,
    push: (...changes) => void pending.push(...changes),
    flush,
    database: () => db,
    close: () => {
      isClosed = true;
      clearTimeout(timer);
      db?.close();
      db = undefined;
    },
  };
}
