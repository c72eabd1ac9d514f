import { findApi, type Level } from '../find-api.ts';
import { LOCATION_2004, response2004, SUSPEND_2004, scorm2004 } from '../limits/scorm-2004.ts';
import type { Mode, NoPlatform, Platform } from '../platform.ts';
import type { Interaction } from '../report.ts';
import { duration, moment } from '../time.ts';
import { makeCalls } from './calls.ts';
import { responseOf } from './responses.ts';
import { type Edition, makeSession } from './session.ts';

const names = {
  start: 'Initialize',
  get: 'GetValue',
  set: 'SetValue',
  commit: 'Commit',
  end: 'Terminate',
  error: 'GetLastError',
  says: 'GetErrorString',
} as const;

const fraction = (share: number, digits: number): string => String(Number(share.toFixed(digits)));

function interaction({ key, objective, says, right, at, took, ...rest }: Interaction): [string, string][] {
  const { type, response } = responseOf(rest);
  return [
    ['id', key],
    ['type', type],
    ['objectives.0.id', objective.replace(/[^A-Za-z0-9_-]/g, '-').slice(0, 250)],
    ['timestamp', moment(at)],
    ...(response !== undefined && response2004(type)(response) === undefined
      ? [['learner_response', response] as [string, string]]
      : []),
    ['result', right ? 'correct' : 'incorrect'],
    ['latency', duration(took)],
    ['description', says.slice(0, 250)],
  ];
}

/**
 * Begins a session by SCORM 2004, 4th edition.
 * @param from the window to search from
 * @param now milliseconds, by a clock that only goes forward
 * @param strict whether a breach of the standard throws, as in tests
 */
export function openScorm2004(from: Level, now: () => number, strict = false): Platform | NoPlatform {
  const raw = findApi(from, 'API_1484_11');
  if (!raw)
    return {
      problem: 'No learning platform was found around this page (SCORM 2004: there is no API_1484_11).',
    };
  const calls = makeCalls(raw, names, scorm2004, strict);
  if (!calls.start())
    return { problem: `Your learning platform did not begin the session. ${calls.faults().join(' ')}` };
  const get = (element: string) => calls.get(element) ?? '';
  const given = get('cmi.mode');
  const mode: Mode = given === 'browse' || given === 'review' ? given : 'normal';
  const mark = get('cmi.scaled_passing_score');
  const passMark = mark !== '' && Number.isFinite(Number(mark)) ? Number(mark) : undefined;
  const score = Number(get('cmi.score.scaled') || 0);

  const edition: Edition = {
    standing: ({ score: share, progress, status, bookmark, suspend }) => [
      ['cmi.suspend_data', suspend],
      ['cmi.location', bookmark],
      // Where the platform has a pass mark it calls every score below it a fail (RTE 4.2.22): not before it is one.
      ...(passMark !== undefined && status === 'incomplete'
        ? []
        : ([
            ['cmi.score.min', '0'],
            ['cmi.score.max', '100'],
            ['cmi.score.raw', fraction(share * 100, 2)],
            ['cmi.score.scaled', fraction(share, 4)],
          ] as const)),
      ['cmi.progress_measure', fraction(status === 'passed' ? 1 : progress, 4)],
      ['cmi.completion_status', status === 'incomplete' ? 'incomplete' : 'completed'],
      ['cmi.success_status', status === 'incomplete' ? 'unknown' : status],
    ],
    interaction,
    untold: [],
    time: (length) => ['cmi.session_time', duration(length)],
    exit: ['cmi.exit', 'suspend'],
  };
  const session = makeSession(calls, edition, mode, now);
  const platform: Omit<Platform, 'report' | 'end'> = {
    learner: { id: get('cmi.learner_id'), name: get('cmi.learner_name') },
    mode,
    passMark,
    bookmark: get('cmi.location'),
    suspended: get('cmi.suspend_data'),
    passed: get('cmi.success_status') === 'passed',
    best: Number.isFinite(score) ? score : 0,
    room: { suspend: SUSPEND_2004, bookmark: LOCATION_2004 },
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
