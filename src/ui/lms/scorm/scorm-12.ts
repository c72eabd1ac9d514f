import { findApi, type Level } from '../find-api.ts';
import { LOCATION_12, response12, SUSPEND_12, scorm12 } from '../limits/scorm-12.ts';
import type { Mode, NoPlatform, Platform } from '../platform.ts';
import type { Interaction } from '../report.ts';
import { clock12, timespan12 } from '../time.ts';
import { makeCalls } from './calls.ts';
import { response12Of } from './responses.ts';
import { type Edition, makeSession } from './session.ts';

const names = {
  start: 'LMSInitialize',
  get: 'LMSGetValue',
  set: 'LMSSetValue',
  commit: 'LMSCommit',
  end: 'LMSFinish',
  error: 'LMSGetLastError',
  says: 'LMSGetErrorString',
} as const;

const hundredth = (share: number): string => String(Math.round(share * 10_000) / 100);

function interaction({ key, objective, right, at, took, ...rest }: Interaction): [string, string][] {
  const { type, response } = response12Of(rest);
  return [
    ['id', key],
    ['objectives.0.id', objective.replace(/[^A-Za-z0-9_-]/g, '-').slice(0, 255)],
    ['time', clock12(at)],
    ['type', type],
    ...(response !== undefined && response12(type)(response) === undefined
      ? [['student_response', response] as [string, string]]
      : []),
    ['result', right ? 'correct' : 'wrong'],
    ['latency', timespan12(took)],
  ];
}

/**
 * Begins a session by SCORM 1.2.
 * @param from the window to search from
 * @param now milliseconds, by a clock that only goes forward
 * @param strict whether a breach of the standard throws, as in tests
 */
export function openScorm12(from: Level, now: () => number, strict = false): Platform | NoPlatform {
  const raw = findApi(from, 'API');
  if (!raw)
    return { problem: 'No learning platform was found around this page (SCORM 1.2: there is no API).' };
  const calls = makeCalls(raw, names, scorm12, strict);
  if (!calls.start())
    return { problem: `Your learning platform did not begin the session. ${calls.faults().join(' ')}` };
  const get = (element: string) => calls.get(element) ?? '';
  const lesson = get('cmi.core.lesson_mode');
  const mode: Mode = lesson === 'browse' || lesson === 'review' ? lesson : 'normal';
  const status = get('cmi.core.lesson_status');
  const mark = get('cmi.student_data.mastery_score');
  const passMark = mark !== '' && Number.isFinite(Number(mark)) ? Number(mark) / 100 : undefined;
  const score = Number(get('cmi.core.score.raw') || 0);

  const edition: Edition = {
    standing: ({ score: share, status: now, bookmark, suspend }) => [
      // First what would be missed most.
      ['cmi.suspend_data', suspend],
      ['cmi.core.lesson_location', bookmark],
      // Where the platform has a pass mark it calls every score below it a fail, as soon as the learner leaves.
      ...(passMark !== undefined && now === 'incomplete'
        ? []
        : ([
            ['cmi.core.score.min', '0'],
            ['cmi.core.score.max', '100'],
            ['cmi.core.score.raw', hundredth(share)],
          ] as const)),
      ['cmi.core.lesson_status', now],
    ],
    interaction,
    untold: mode === 'browse' && status === 'not attempted' ? [['cmi.core.lesson_status', 'browsed']] : [],
    time: (length) => ['cmi.core.session_time', timespan12(length)],
    exit: ['cmi.core.exit', 'suspend'],
  };
  const session = makeSession(calls, edition, mode, now);
  const platform: Omit<Platform, 'report' | 'end'> = {
    learner: { id: get('cmi.core.student_id'), name: get('cmi.core.student_name') },
    mode,
    passMark,
    bookmark: get('cmi.core.lesson_location'),
    suspended: get('cmi.suspend_data'),
    passed: status === 'passed',
    best: Number.isFinite(score) ? score / 100 : 0,
    room: { suspend: SUSPEND_12, bookmark: LOCATION_12 },
    back: undefined,
  };
  // What could not be read at the start is no fault of the learner's: optional elements may be missing.
  calls.faults();
  return {
    ...platform,
    report: async (report) => session.report(report),
    end: async (report) => session.end(report),
  };
}
