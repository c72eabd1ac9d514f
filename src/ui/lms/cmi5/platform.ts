import type { Mode, NoPlatform, Platform } from '../platform.ts';
import type { Report } from '../report.ts';
import { type LaunchData, type LaunchQuery, readLaunch, readLaunchData } from './launch.ts';
import { fetchToken, makeRecordStore, type RecordStore, Refused } from './record-store.ts';
import { makeWriter, type Statement } from './statements.ts';

/** The document in which we keep what SCORM keeps in suspend data and bookmark. */
const STATE = 'switched-live';
/** As much as SCORM 2004 holds: a request that outlives its page may have 64 kB in all. */
const ROOM = { suspend: 40_000, bookmark: 1000 } as const;

/** What has been told in this registration: some of it may be told but once. */
interface Kept {
  readonly suspend: string;
  readonly bookmark: string;
  readonly best: number;
  readonly passed: boolean;
  readonly failed: boolean;
  readonly completed: boolean;
}
const NOTHING: Kept = { suspend: '', bookmark: '', best: 0, passed: false, failed: false, completed: false };

function readKept(data: unknown): Kept {
  if (typeof data !== 'object' || data === null) return NOTHING;
  const given = data as Readonly<Record<string, unknown>>;
  const text = (name: string) => (typeof given[name] === 'string' ? given[name] : '');
  const best = typeof given.best === 'number' && given.best >= 0 && given.best <= 1 ? given.best : 0;
  return {
    suspend: text('suspend'),
    bookmark: text('bookmark'),
    best,
    passed: given.passed === true,
    failed: given.failed === true,
    completed: given.completed === true,
  };
}

const MODES: Readonly<Record<LaunchData['launchMode'], Mode>> = {
  Normal: 'normal',
  Browse: 'browse',
  Review: 'review',
};

/** A UUID of version 4; also where the page came over plain http, and the browser makes none itself. */
function uuid(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}

const wordsOf = (problem: unknown): string => (problem instanceof Error ? problem.message : String(problem));
/** No answer, or one that may be another next time. */
const isPassing = (problem: unknown): boolean =>
  !(problem instanceof Refused) ||
  problem.status === 0 ||
  problem.status >= 500 ||
  [401, 403, 408, 429].includes(problem.status);

/**
 * Begins a session by cmi5: fetches the token, reads the launch data, the learner's preferences and what we kept, and
 * says `initialized`, in this order (cmi5 8.2, 10, 11, 9.3.2).
 * @param address of this page, with the launch in it
 */
export async function openCmi5(address: string): Promise<Platform | NoPlatform> {
  let isEnding = false;
  try {
    const launch = readLaunch(address);
    const records = makeRecordStore(launch, await fetchToken(launch.fetch), () => isEnding);
    const data = readLaunchData(await records.state('LMS.LaunchData'));
    // Asked for because it must be; the course has one language and no sound, so nothing follows from it.
    await records.profile('cmi5LearnerPreferences').catch(() => undefined);
    const kept = readKept(await records.state(STATE));
    return await begin(launch, data, kept, records, () => {
      isEnding = true;
    });
  } catch (problem) {
    return {
      problem: `Your learning platform did not begin the session: ${wordsOf(problem)}. A launch works once: open the activity there again.`,
    };
  }
}

async function begin(
  launch: LaunchQuery,
  data: LaunchData,
  before: Kept,
  records: RecordStore,
  ending: () => void,
): Promise<Platform> {
  const begun = Date.now();
  const { defined, answered } = makeWriter(launch, data, uuid);
  await records.send([defined('initialized', begun)]);

  const mode = MODES[data.launchMode];
  const waiting: Statement[] = [];
  let inFlight = 0;
  let kept = before;
  let written = before;
  let isJudged = false;
  let isOver = false;

  /** Queues what a report has to say that has not been said. */
  const queue = ({ status, score, suspend, bookmark, interactions }: Report) => {
    const now = Date.now();
    const length = now - begun;
    // Order goes by these times (cmi5 9.3): a clock that was set must not put an answer outside of the session.
    const within = (at: number) => Math.min(Math.max(at, begun), now);
    waiting.push(...interactions.map((one) => answered({ ...one, at: within(one.at) })));
    let { passed, failed, completed } = kept;
    // One judgement a session, and none after a pass (cmi5 9.3): what cannot be said now is said in the next.
    if (status !== 'incomplete' && !passed && !isJudged && !(status === 'failed' && failed)) {
      waiting.push(defined(status, now, length, score));
      isJudged = true;
      if (status === 'passed') passed = true;
      else failed = true;
    }
    if (status !== 'incomplete' && !completed) {
      waiting.push(defined('completed', now, length));
      completed = true;
    }
    kept = { suspend, bookmark, best: score, passed, failed, completed };
  };
  const keep = async () => {
    if (JSON.stringify(kept) === JSON.stringify(written)) return;
    const writing = kept;
    await records.putState(STATE, writing);
    written = writing;
  };
  /** Sends what waits, in order; what can never be taken is left out and told. */
  const flush = async (): Promise<string[]> => {
    const problems: string[] = [];
    while (waiting.length > 0) {
      const batch = waiting.slice(0, problems.length > 0 ? 1 : 50);
      inFlight = batch.length;
      try {
        await records.send(batch);
        waiting.splice(0, batch.length);
      } catch (problem) {
        problems.push(`${wordsOf(problem)}.`);
        if (isPassing(problem)) return problems;
        // One of them is at fault: from here on they go one by one, and only that one is given up.
        if (batch.length === 1) waiting.shift();
      } finally {
        inFlight = 0;
      }
    }
    return problems;
  };

  const { account, name = '' } = launch.actor;
  return {
    learner: { id: account?.name ?? JSON.stringify(launch.actor), name },
    mode,
    passMark: data.masteryScore,
    bookmark: before.bookmark,
    suspended: before.suspend,
    passed: before.passed,
    best: before.best,
    room: ROOM,
    back: data.returnURL,
    report: async (report) => {
      // Looking around and reviewing leave no trace (cmi5 10, launchMode).
      if (isOver || mode !== 'normal') return [];
      queue(report);
      const problems = await flush();
      try {
        await keep();
      } catch (problem) {
        problems.push(`${wordsOf(problem)}.`);
      }
      return problems;
    },
    end: async (report) => {
      if (isOver) return [];
      isOver = true;
      ending();
      if (mode === 'normal' && report) queue(report);
      const now = Date.now();
      // What is on its way already arrives before: it was sent before.
      const last = [...waiting.slice(inFlight), defined('terminated', now, now - begun)];
      const sent = await Promise.allSettled([
        records.send(last),
        mode === 'normal' && report ? keep() : undefined,
      ]);
      return sent.flatMap((one) => (one.status === 'rejected' ? [`${wordsOf(one.reason)}.`] : []));
    },
  };
}
