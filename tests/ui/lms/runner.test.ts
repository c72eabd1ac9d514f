import { expect, test } from 'vitest';
import type { Platform } from '../../../src/ui/lms/platform.ts';
import type { Report, Standing } from '../../../src/ui/lms/report.ts';
import { makeRunner, type Told } from '../../../src/ui/lms/runner.ts';
import type { Look } from '../../../src/ui/lms/subject.ts';

const standing = (over: Partial<Standing> = {}): Standing => ({
  score: 0.5,
  progress: 0.5,
  status: 'incomplete',
  ...over,
});

function set(over: Partial<Platform> = {}) {
  const reports: Report[] = [];
  const ends: (Report | undefined)[] = [];
  const told: Told[] = [];
  let look: Look = { standing: standing(), says: 'half', suspend: 'AQID', fresh: [] };
  let place: string | undefined;
  const platform: Platform = {
    learner: { id: 'ann-7', name: '' },
    mode: 'normal',
    passMark: undefined,
    bookmark: '',
    suspended: 'before',
    passed: false,
    best: 0,
    room: { suspend: 4096, bookmark: 255 },
    back: undefined,
    report: async (report) => {
      reports.push(report);
      return [];
    },
    end: async (report) => {
      ends.push(report);
      return [];
    },
    ...over,
  };
  const subject = { start: '/', restore: async () => undefined, look: async () => look };
  const runner = makeRunner(
    platform,
    subject,
    () => place,
    (what) => told.push(what),
  );
  return {
    runner,
    reports,
    ends,
    told,
    now: (next: Standing) => {
      look = { ...look, standing: next };
    },
    go: (to: string | undefined) => {
      place = to;
    },
  };
}

test('what has been reached is not taken back: neither a pass nor the best score', async () => {
  const { runner, reports, now } = set();
  now(standing({ score: 1, status: 'passed' }));
  await runner.update();
  now(standing({ score: 0.9 }));
  await runner.update();
  expect(reports.map(({ score, status }) => [score, status])).toEqual([
    [1, 'passed'],
    [1, 'passed'],
  ]);
  const later = set({ passed: true, best: 0.8 });
  await later.runner.update();
  expect(later.reports[0]).toMatchObject({ score: 0.8, status: 'passed' });
});

test('a pass mark of the platform takes the place of our rule', async () => {
  const { runner, reports, now } = set({ passMark: 0.6 });
  await runner.update();
  now(standing({ score: 0.6 }));
  await runner.update();
  expect(reports.map(({ status }) => status)).toEqual(['incomplete', 'passed']);
  const over = set({ passMark: 0.8 });
  over.now(standing({ progress: 1, status: 'passed' }));
  await over.runner.update();
  expect(over.reports[0]?.status).toBe('failed');
});

test('the bookmark follows the learner, and stays where they were while that cannot be told', async () => {
  const { runner, reports, go } = set();
  await runner.update();
  go('/lessons/x/');
  await runner.update('too');
  go(undefined);
  await runner.update('too');
  expect(reports.map(({ bookmark }) => bookmark)).toEqual(['/', '/lessons/x/', '/lessons/x/']);
});

test('what changes nothing is not reported, but for the time now and then', async () => {
  const { runner, reports } = set();
  await runner.update();
  await runner.update();
  expect(reports).toHaveLength(1);
  await runner.update('too');
  expect(reports).toHaveLength(2);
});

test('what was not taken is reported again, though nothing has changed', async () => {
  const reports: Report[] = [];
  const { runner } = set({
    report: async (report) => {
      reports.push(report);
      return reports.length === 1 ? ['LMSCommit was refused.'] : [];
    },
  });
  await runner.update();
  await runner.update();
  await runner.update();
  expect(reports).toHaveLength(2);
});

test('it ends once, with what was seen last; before anything was seen nothing is written over', async () => {
  const { runner, ends, now, reports } = set();
  now(standing({ score: 0.7 }));
  await runner.update();
  await runner.end();
  await runner.end();
  await runner.update();
  expect(ends).toHaveLength(1);
  expect(ends[0]?.score).toBe(0.7);
  expect(reports).toHaveLength(1);
  const early = set();
  await early.runner.end();
  expect(early.ends).toEqual([undefined]);
});

test('a device whose progress cannot be read is told of, and the session goes on', async () => {
  const { runner, told, reports, now } = set();
  let isBroken = true;
  const half = standing();
  Object.defineProperty(half, 'score', {
    get: () => {
      if (isBroken) throw new Error('no room');
      return 0.5;
    },
  });
  now(half);
  await runner.update();
  expect(told[0]?.problems.join()).toContain('no room');
  isBroken = false;
  await runner.update();
  expect(reports[0]?.score).toBe(0.5);
});
