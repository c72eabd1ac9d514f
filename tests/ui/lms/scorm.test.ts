import { describe, expect, test } from 'vitest';
import { SUSPEND_12 } from '../../../src/ui/lms/limits/scorm-12.ts';
import type { NoPlatform, Platform } from '../../../src/ui/lms/platform.ts';
import type { Interaction, Report } from '../../../src/ui/lms/report.ts';
import { openScorm12 } from '../../../src/ui/lms/scorm/scorm-12.ts';
import { openScorm2004 } from '../../../src/ui/lms/scorm/scorm-2004.ts';
import { type Double, makeDouble } from './platform-double.ts';

const learner12 = {
  core: { student_id: 'ann-7', student_name: 'Reed, Ann', credit: 'credit', lesson_mode: 'normal' },
};
const learner2004 = { learner_id: 'ann-7', learner_name: 'Reed, Ann', credit: 'credit', mode: 'normal' };

const answer = (over: Partial<Interaction> = {}): Interaction => ({
  key: 'valves-2-1-mk3',
  objective: 'which-valve-opens',
  says: 'say which valve opens',
  kind: 'choice',
  response: { kind: 'choice', ids: ['strip/1', 'strip/4'] },
  right: true,
  at: Date.UTC(2027, 2, 31, 9, 5, 7),
  took: 65_430,
  ...over,
});
const report = (over: Partial<Report> = {}): Report => ({
  score: 0.4286,
  progress: 0.5,
  status: 'incomplete',
  bookmark: '/lessons/two-ports/',
  suspend: 'AQID',
  interactions: [],
  ...over,
});

let time = 0;
const now = () => time;
function opened(platform: Platform | NoPlatform): Platform {
  if ('problem' in platform) throw new Error(platform.problem);
  return platform;
}
const open12 = (double: Double) => opened(openScorm12(double.level, now, true));
const open2004 = (double: Double) => opened(openScorm2004(double.level, now, true));

describe('SCORM 1.2', () => {
  test('what the platform says of the learner and of before is read', () => {
    const platform = open12(
      makeDouble('scorm-1.2', {
        core: {
          ...learner12.core,
          lesson_location: '/jobs/',
          lesson_status: 'passed',
          score: { raw: '71.5' },
        },
        suspend_data: 'AQID',
        student_data: { mastery_score: '80' },
      }),
    );
    expect(platform).toMatchObject({
      learner: { id: 'ann-7', name: 'Reed, Ann' },
      mode: 'normal',
      passMark: 0.8,
      bookmark: '/jobs/',
      suspended: 'AQID',
      passed: true,
      best: 0.715,
    });
  });

  test('a report is written whole, an end says suspend, and the platform refuses nothing', async () => {
    const double = makeDouble('scorm-1.2', learner12);
    time = 1000;
    const platform = open12(double);
    time = 1000 + 3_661_230;
    expect(await platform.report(report({ interactions: [answer()] }))).toEqual([]);
    expect(await platform.end(report({ score: 1, status: 'passed' }))).toEqual([]);
    expect(double.breaches).toEqual([]);
    expect(double.cmi()).toMatchObject({
      suspend_data: 'AQID',
      core: { lesson_location: '/lessons/two-ports/', lesson_status: 'passed', exit: 'suspend' },
    });
    expect(double.calls).toContain('LMSSetValue cmi.core.session_time 0001:01:01.23');
    expect(double.calls).toContain('LMSSetValue cmi.core.score.raw 42.86');
    expect(double.calls.filter((call) => call.includes('interactions.0'))).toEqual([
      'LMSSetValue cmi.interactions.0.id valves-2-1-mk3',
      'LMSSetValue cmi.interactions.0.objectives.0.id which-valve-opens',
      expect.stringMatching(/^LMSSetValue cmi.interactions.0.time \d\d:05:07$/),
      'LMSSetValue cmi.interactions.0.type performance',
      'LMSSetValue cmi.interactions.0.student_response strip/1, strip/4',
      'LMSSetValue cmi.interactions.0.result correct',
      'LMSSetValue cmi.interactions.0.latency 0000:01:05.43',
    ]);
    expect(double.calls.at(-1)).toBe('LMSFinish');
  });

  test('the session ends once, whatever is called afterwards', async () => {
    const double = makeDouble('scorm-1.2', learner12);
    const platform = open12(double);
    await platform.end(report());
    await platform.end(report());
    await platform.report(report({ score: 1 }));
    expect(double.calls.filter((call) => call === 'LMSFinish')).toHaveLength(1);
    expect(double.breaches).toEqual([]);
  });

  test('ended before anything is known, what the platform has stays as it was', async () => {
    const double = makeDouble('scorm-1.2', {
      core: { ...learner12.core, lesson_status: 'failed', score: { raw: '40' } },
      suspend_data: 'AQID',
    });
    await open12(double).end();
    expect(double.cmi()).toMatchObject({
      suspend_data: 'AQID',
      core: { lesson_status: 'failed', score: { raw: '40' } },
    });
    expect(double.calls.at(-1)).toBe('LMSFinish');
  });

  test('with a pass mark no score is told before it is final: the platform would call it a fail at once', async () => {
    const before = { ...learner12, student_data: { mastery_score: '80' } };
    const double = makeDouble('scorm-1.2', before);
    const platform = open12(double);
    await platform.end(report());
    expect(double.cmi()).toMatchObject({ core: { lesson_status: 'incomplete', score: { raw: '' } } });
    // The double does what platforms do: a score under the mark turns “incomplete” into “failed” (RTE 1.2 3.4.4).
    const lax = makeDouble('scorm-1.2', before);
    lax.api.LMSInitialize?.('');
    lax.api.LMSSetValue?.('cmi.core.score.raw', '43');
    lax.api.LMSSetValue?.('cmi.core.lesson_status', 'incomplete');
    lax.api.LMSFinish?.('');
    expect(lax.cmi()).toMatchObject({ core: { lesson_status: 'failed' } });
  });

  test('taken for no credit it is told all the same: what counts is the platform’s affair (RTE 3.4.4)', async () => {
    const double = makeDouble('scorm-1.2', { core: { ...learner12.core, credit: 'no-credit' } });
    await open12(double).end(report({ status: 'passed', score: 1 }));
    expect(double.cmi()).toMatchObject({ core: { lesson_status: 'passed', score: { raw: '100' } } });
  });

  test.each(['browse', 'review'] as const)('in %s mode nothing but time is told', async (lesson_mode) => {
    const double = makeDouble('scorm-1.2', { core: { ...learner12.core, lesson_mode } });
    const platform = open12(double);
    expect(platform.mode).toBe(lesson_mode);
    await platform.report(report({ status: 'passed', interactions: [answer()] }));
    await platform.end(report({ status: 'passed' }));
    const told = double.calls
      .filter((call) => call.startsWith('LMSSetValue'))
      .map((call) => call.split(' ')[1]);
    const time = ['cmi.core.session_time', 'cmi.core.exit'];
    expect(told).toEqual(lesson_mode === 'browse' ? ['cmi.core.lesson_status', ...time] : time);
    expect(double.cmi()).toMatchObject({ suspend_data: '' });
  });

  test('a platform that refuses, throws or goes away is told of in words, and is told again', async () => {
    const double = makeDouble('scorm-1.2', learner12);
    const platform = open12(double);
    double.fail('LMSSetValue', 'false');
    expect((await platform.report(report({ interactions: [answer()] })))[0]).toContain('was refused');
    double.fail('LMSSetValue', 'throw');
    expect((await platform.report(report())).join()).toContain('the window is gone');
    double.fail('LMSSetValue', undefined);
    double.fail('LMSCommit', 'false');
    expect((await platform.report(report())).join()).toContain('LMSCommit was refused');
    double.fail('LMSCommit', undefined);
    expect(await platform.report(report())).toEqual([]);
    expect(double.cmi()).toMatchObject({ suspend_data: 'AQID', core: { lesson_status: 'incomplete' } });
    expect(double.calls).toContain('LMSSetValue cmi.interactions.0.id valves-2-1-mk3');
  });

  test('the strict double catches what the lax one lets by', () => {
    const double = makeDouble('scorm-1.2', learner12);
    double.api.LMSInitialize?.('');
    expect(double.api.LMSSetValue?.('cmi.suspend_data', 'x'.repeat(SUSPEND_12))).toBe('true');
    expect(double.api.LMSSetValue?.('cmi.suspend_data', 'x'.repeat(SUSPEND_12 + 1))).toBe('false');
    expect(double.api.LMSSetValue?.('cmi.interactions.0.id', 'strip/1')).toBe('false');
    expect(double.breaches).toHaveLength(2);
  });

  test('our own layer sends nothing that breaks the standard', async () => {
    const double = makeDouble('scorm-1.2', learner12);
    await expect(open12(double).report(report({ suspend: 'x'.repeat(4097) }))).rejects.toThrow(
      'cmi.suspend_data: expected at most 4096 characters, found 4097',
    );
    const inUse = opened(openScorm12(makeDouble('scorm-1.2', learner12).level, now));
    expect((await inUse.report(report({ suspend: 'x'.repeat(4097) })))[0]).toContain('breaks the standard');
    expect(double.breaches).toEqual([]);
  });
});

describe('SCORM 2004', () => {
  test('a report is written whole, and the platform refuses nothing', async () => {
    const double = makeDouble('scorm-2004', learner2004);
    time = 0;
    const platform = open2004(double);
    time = 3_661_230;
    const wires = answer({
      key: 'job-1',
      kind: 'work',
      response: { kind: 'match', pairs: [['spur/L', 'strip/1'] as const] },
      right: false,
    });
    expect(await platform.report(report({ interactions: [answer(), wires] }))).toEqual([]);
    expect(double.cmi()).toMatchObject({ completion_status: 'incomplete', success_status: 'unknown' });
    expect(await platform.end(report({ score: 1, status: 'passed' }))).toEqual([]);
    expect(double.breaches).toEqual([]);
    expect(double.cmi()).toMatchObject({
      completion_status: 'completed',
      success_status: 'passed',
      score: { scaled: '1', raw: '100', min: '0', max: '100' },
      progress_measure: '1',
      location: '/lessons/two-ports/',
      suspend_data: 'AQID',
      exit: 'suspend',
    });
    expect(double.calls).toContain('SetValue cmi.session_time PT1H1M1.23S');
    expect(double.calls).toContain('SetValue cmi.interactions.0.learner_response strip/1[,]strip/4');
    expect(double.calls).toContain('SetValue cmi.interactions.1.learner_response spur/L[.]strip/1');
    expect(double.calls).toContain('SetValue cmi.interactions.1.result incorrect');
    expect(double.calls).toContain('SetValue cmi.interactions.0.timestamp 2027-03-31T09:05:07.0Z');
    expect(double.calls.at(-1)).toBe('Terminate');
  });

  test('a pass mark of the platform is read, and no score is told before it is final', async () => {
    const double = makeDouble('scorm-2004', { ...learner2004, scaled_passing_score: '0.8' });
    const platform = open2004(double);
    expect(platform.passMark).toBe(0.8);
    await platform.end(report());
    expect(double.calls.some((call) => call.startsWith('SetValue cmi.score'))).toBe(false);
    // The double does as RTE 4.2.22 says: with a score under the mark the learner has failed.
    expect(double.cmi()).toMatchObject({ success_status: 'unknown', completion_status: 'incomplete' });
  });

  test.each(['browse', 'review'] as const)('in %s mode nothing but time is told', async (mode) => {
    const double = makeDouble('scorm-2004', { ...learner2004, mode });
    const platform = open2004(double);
    await platform.report(report({ status: 'passed', interactions: [answer()] }));
    await platform.end(report({ status: 'passed' }));
    const told = double.calls.filter((call) => call.startsWith('SetValue')).map((call) => call.split(' ')[1]);
    expect(told).toEqual(['cmi.session_time', 'cmi.exit']);
  });
});

test('without a platform the reason is said', () => {
  const alone = { opener: null } as Record<string, unknown>;
  alone.parent = alone;
  expect(openScorm12(alone as never, now)).toEqual({ problem: expect.stringContaining('no API') });
  expect(openScorm2004(alone as never, now)).toEqual({ problem: expect.stringContaining('API_1484_11') });
});
