import { describe, expect, test } from 'vitest';
import { wireKey } from '../../../src/engine/model/wiring.ts';
import { kindOf } from '../../../src/files/job.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { jobPages } from '../../../src/files/site/jobs.ts';
import {
  draftOf,
  freshJob,
  type JobDraft,
  jobOf,
  readJobDraft,
  tidyWires,
} from '../../../src/ui/author/job/draft.ts';
import { findingsOf } from '../../../src/ui/author/job/findings.ts';
import { jobData, packJob, unpackJob } from '../../../src/ui/author/job/out.ts';
import { quietWires } from '../../../src/ui/author/job/quiet.ts';
import { fileTroubles, nameOfPlace, wiringTroubles } from '../../../src/ui/author/job/troubles.ts';

const shelf = loadShelf();
const jobs = jobPages().map(({ job }) => job);
const UNVENTED = 'unvented-three-port';
const layout = shelf.layout(UNVENTED);
const [right] = layout.right;
const [wrong] = layout.wrong;
const oldOf = ({ kind, from }: JobDraft) => (kind === 'convert' ? shelf.layout(from.system) : undefined);
const words = { id: 'mine', system: UNVENTED, title: 'T', brief: 'B', summary: 'S' };
const draft = (change: Partial<JobDraft>): JobDraft => ({ ...freshJob(), ...words, ...change });

describe('every job of the course on the desk', () => {
  test('comes off it as it went on', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(55);
    for (const job of jobs) {
      const kept: unknown = JSON.parse(JSON.stringify(draftOf(job)));
      expect(readJobDraft(kept)).toEqual(draftOf(job));
      // An empty `gives` is a bare job, and is written as one.
      expect(jobOf(draftOf(job))).toEqual(job);
    }
  });

  test('has nothing to put right, and its start is as its kind says', () => {
    for (const job of jobs) {
      const one = draftOf(job);
      const now = shelf.layout(job.system);
      expect([job.id, ...fileTroubles(one), ...wiringTroubles(one, now, oldOf(one))]).toEqual([job.id]);
      const found = findingsOf(one, now, oldOf(one));
      if (!found) throw new Error(`${job.id} has no findings`);
      if (kindOf(job) === 'complete') expect(found.within.length).toBeGreaterThan(0);
      if (kindOf(job) !== 'bare' && kindOf(job) !== 'complete') expect(found.verdict.accepted).toBe(false);
      expect(found.lift.length + found.land.length).toBeGreaterThan(0);
    }
  });

  test('travels by link', () => {
    for (const job of jobs) expect(unpackJob(packJob(job))).toEqual(job);
  });
});

test('what is missing is told for each field, in the words of the check', () => {
  expect(fileTroubles(freshJob()).map(({ place, says }) => `${nameOfPlace(place)}: ${says}`)).toEqual([
    'Name of the file: Expected an id: small letters, digits and hyphens.',
    'System: Expected a system: its id, in small letters, digits and hyphens.',
    'Title: Expected a title.',
    'Brief: Expected the brief: what the learner is told.',
    'One line for lists: Expected one sentence for lists of jobs.',
  ]);
});

test('a job to put right that starts right is refused, and one with a classic mistake is not', () => {
  const [trouble] = wiringTroubles(
    draft({ kind: 'put-right', wires: right?.wires ?? [] }),
    layout,
    undefined,
  );
  expect(trouble).toEqual({
    place: 'gives.wires',
    says: 'Expected a wiring with something to put right; found one that is accepted as it is.',
  });
  const mistaken = draft({ kind: 'put-right', wires: wrong?.wires ?? [] });
  expect(wiringTroubles(mistaken, layout, undefined)).toEqual([]);
  const found = findingsOf(mistaken, layout, undefined);
  expect(found?.verdict.findings.map(({ id }) => id)).toEqual(
    expect.arrayContaining([...(wrong?.breaks ?? [])]),
  );
});

test('locked wires that no right wiring has are told, and so are wires to unknown terminals', () => {
  const stray = draft({ kind: 'complete', wires: [['spur/L', 'pump/N']] });
  expect(wiringTroubles(stray, layout, undefined)[0]?.says).toMatch(
    /^Expected only wires of one reference; found /,
  );
  expect(findingsOf(stray, layout, undefined)?.within).toEqual([]);
  const unknown = draft({ kind: 'complete', wires: [['spur/L', 'strip/99']] });
  expect(wiringTroubles(unknown, layout, undefined)[0]).toMatchObject({ place: 'gives.wires[0][1]' });
});

test('a job that promises wires and has none is told so', () => {
  expect(wiringTroubles(draft({ kind: 'complete' }), layout, undefined)[0]?.says).toContain('Wire from bare');
  const none = draft({ kind: 'convert', from: { ...freshJob().from, system: 'three-port', says: 'X' } });
  expect(wiringTroubles(none, layout, shelf.layout('three-port'))[0]?.place).toBe('from.wires');
});

test('neutrals and earths alone leave the whole switching to the learner', () => {
  const quiet = quietWires(layout.system, right?.wires ?? []);
  expect(quiet.length).toBeGreaterThan(5);
  const ends = quiet.flat().filter((end) => !end.startsWith('strip/'));
  for (const end of ends) expect(end).toMatch(/\/(N|E|blue|earth)$/);
  const found = findingsOf(draft({ kind: 'complete', wires: quiet }), layout, undefined);
  expect(found?.within).toContain(right?.title);
  expect(found?.land.length).toBeGreaterThan(10);
});

test('wires made by hand are turned and sorted as a file has them, and none is lost', () => {
  const made = [
    ['strip/8', 'pump/L'],
    ['strip/9', 'strip/8'],
    ['spur/L', 'strip/1'],
    ['pump/L', 'strip/8'],
  ] as const;
  expect(tidyWires(layout.system, made)).toEqual([
    ['spur/L', 'strip/1'],
    ['pump/L', 'strip/8'],
    ['strip/8', 'strip/9'],
  ]);
  for (const { wires } of [...layout.right, ...layout.wrong])
    expect(tidyWires(layout.system, wires).map(wireKey).sort()).toEqual(wires.map(wireKey).sort());
});

test('the page to try a job on gets what the page of a course job gets', () => {
  for (const { job, given, was } of jobPages()) {
    const old = job.from && shelf.layout(job.from.system);
    expect(jobData(job, 'k', shelf.layout(job.system), old)).toMatchObject({ given, ...(was && { was }) });
  }
});

test('what was kept and is no draft is passed over', () => {
  const good = draftOf(jobs[0] ?? { ...words });
  expect(readJobDraft(good)).toEqual(good);
  for (const bad of [
    null,
    7,
    {},
    { ...good, kind: 'x' },
    { ...good, wires: [['a']] },
    { ...good, from: null },
  ])
    expect(readJobDraft(bad)).toBeUndefined();
});
