import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Coursework } from '../../../src/course/coursework/coursework.ts';
import { type Slot, variantSeed } from '../../../src/course/coursework/slots.ts';
import type { Work } from '../../../src/course/coursework/work.ts';
import type { Answer } from '../../../src/course/item.ts';
import { addressOf } from '../../../src/course/task.ts';
import type { Act } from '../../../src/engine/diagnose/act.ts';
import { loadOutline } from '../../../src/files/site/course.ts';
import { jobPages } from '../../../src/files/site/jobs.ts';
import { courseworkStanding, slotsIn } from '../../../src/ui/lms/coursework-subject.ts';
import { SUSPEND_12 } from '../../../src/ui/lms/limits/scorm-12.ts';
import {
  type CourseworkMemory,
  packCoursework,
  unpackCoursework,
} from '../../../src/ui/lms/suspend/coursework.ts';

const rules = { attempts: 3, hints: 2 };
const coursework: Coursework = {
  id: 'unvented-week',
  title: 'An unvented week',
  variants: 'own',
  seed: 4711,
  tasks: [
    {
      id: 'live',
      kind: 'questions',
      title: 'Live',
      about: { make: 'live-terminals', layouts: ['three-port'] },
      level: 2,
      count: 12,
      ...rules,
    },
    {
      id: 'order',
      kind: 'questions',
      title: 'Order',
      about: { make: 'path-order', layouts: ['three-port'] },
      level: 1,
      count: 8,
      ...rules,
    },
    { id: 'wire', kind: 'job', job: 'unvented-three-port', ...rules },
    { id: 'find', kind: 'fault', system: 'three-port', level: 2, ...rules },
  ],
};
const outline = loadOutline();
const slots = slotsIn(coursework, outline);
const code = 'ANN-7';
const begun = Date.UTC(2027, 0, 11, 9);
const dealt = { coursework, slots, code, begun };
const none: CourseworkMemory['states'] = new Map();
const pack = (work: readonly Work[], limit: number, states = none) =>
  packCoursework(dealt, { work, states }, limit);
const back = (text: string) => unpackCoursework(text, { coursework, slots, code });

const wires = jobPages().find(({ job }) => job.id === 'unvented-three-port')?.references[0]?.wires ?? [];
const act = fc.oneof(
  fc.constantFrom<Act[]>({ do: 'isolate' }, { do: 'lock' }, { do: 'prove' }, { do: 'open', part: 'boiler' }),
  fc.tuple(fc.nat(12), fc.nat(12)).map(
    ([a, b]): Act => ({
      do: 'test',
      test: { kind: 'reads', instrument: 'volts', between: [`strip/${a}`, `strip/${b}`] },
    }),
  ),
);
const marks = fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { maxLength: 8 });

/** Any piece of work on a slot, its question as dealt or another. */
const anyWork = (slot: Slot): fc.Arbitrary<Work> =>
  fc
    .record({
      attempt: fc.integer({ min: 1, max: 4 }),
      minutes: fc.nat(20_000),
      took: fc.nat(600_000),
      hints: fc.nat(3),
      right: fc.boolean(),
      further: fc.nat(60),
      marked: marks,
      left: fc.nat(8),
      acts: fc.array(act, { maxLength: 60 }),
    })
    .map(({ minutes, further, marked, left, acts, ...rest }): Work => {
      const head = { slot: slot.id, at: begun + minutes * 60_000 + further, ...rest };
      if (slot.kind === 'job') return { ...head, kind: 'job', wires: wires.slice(left) };
      if (slot.kind !== 'question')
        return { ...head, kind: 'visit', callout: 'fault/three-port/1/2', acts, said: 'boiler: dead' };
      const seed = (variantSeed(coursework, code, slot, rest.attempt) + further) >>> 0;
      const ids = marked.map((way) => `strip/${way}`);
      const answer: Answer =
        slot.about.make === 'path-order' ? { kind: 'order', steps: ids } : { kind: 'mark', marked: ids };
      return { ...head, kind: 'question', item: addressOf(slot.about, seed, slot.level), answer };
    });
const anySitting = fc
  .array(
    fc.constantFrom(...slots).chain((slot) => anyWork(slot)),
    { maxLength: 90, size: 'max' },
  )
  .map((work) => work.sort((a, b) => a.at - b.at));

describe('a coursework in suspend data', () => {
  test('it never exceeds what SCORM 1.2 keeps, and every slot stands as before', () => {
    fc.assert(
      fc.property(anySitting, fc.constantFrom(SUSPEND_12, 1000, 64_000), (work, limit) => {
        const text = pack(work, limit);
        expect(text.length).toBeLessThanOrEqual(limit);
        const kept = back(text);
        expect(courseworkStanding(coursework, slots, kept?.work ?? [], kept?.states ?? none)).toEqual(
          courseworkStanding(coursework, slots, work, none),
        );
        // What comes back is as it was, and in its order.
        for (const one of kept?.work ?? []) expect(work).toContainEqual(one);
        if (limit === 64_000) expect(kept?.work).toEqual(work);
      }),
      { numRuns: 40 },
    );
  });

  test('a whole sitting with a wiring of 35 wires and a visit of 40 acts fits in 4,096 characters', () => {
    const sitting = slots.flatMap((slot) => fc.sample(anyWork(slot), { numRuns: 2, seed: 7 }));
    const work = sitting.map(
      (one, k): Work => ({
        ...one,
        at: begun + k * 90_000,
        ...(one.kind === 'visit' && { acts: fc.sample(act, { numRuns: 40, seed: 1 }) }),
      }),
    );
    expect(wires.length).toBeGreaterThanOrEqual(30);
    const text = pack(work, SUSPEND_12);
    expect(back(text)?.work).toEqual(work);
  });

  test('where it does not fit, what was right is kept before what was not, and visits go before questions', () => {
    const many = slots.flatMap((slot) => fc.sample(anyWork(slot), { numRuns: 6, seed: 3 }));
    const work = many.map(
      (one, k): Work => ({
        ...one,
        at: begun + k * 60_000,
        right: k % 6 === 3,
        hints: 0,
        attempt: ((k % 6) % 3) + 1,
      }),
    );
    const kept = back(pack(work, 700));
    const left = kept?.work ?? [];
    expect(left.length).toBeGreaterThan(0);
    expect(left.length).toBeLessThan(work.length);
    expect(left.every(({ right }) => right)).toBe(true);
    expect(left.some(({ kind }) => kind === 'visit')).toBe(false);
    expect(kept?.states.size).toBe(slots.length);
  });

  test('what is remembered without its work goes on being remembered', () => {
    const states = new Map([[slots[0]?.id ?? '', { used: 2, right: true }]]);
    const kept = back(pack([], SUSPEND_12, states));
    expect(kept?.states).toEqual(states);
    expect(courseworkStanding(coursework, slots, [], kept?.states ?? none).right).toBe(1);
  });

  test('a package with other tasks keeps the work on tasks that are still there', () => {
    const work = slots.flatMap((slot) => fc.sample(anyWork(slot), { numRuns: 1, seed: 9 }));
    const fewer = { ...coursework, tasks: coursework.tasks.slice(1) };
    const kept = unpackCoursework(pack(work, 64_000), {
      coursework: fewer,
      slots: slotsIn(fewer, outline),
      code,
    });
    expect(kept?.work.length).toBe(work.length - 12);
    expect(kept?.states.size).toBe(0);
  });

  test('whatever the platform gives back, reading never throws, and damage is told from nothing', () => {
    const text = pack(fc.sample(anySitting, { numRuns: 1, seed: 5 })[0] ?? [], SUSPEND_12);
    for (const broken of ['', 'AQID', text.slice(0, -4), `${text}AAAA`]) expect(back(broken)).toBeUndefined();
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.base64String()), (any) => {
        expect(() => back(any)).not.toThrow();
      }),
    );
  });
});
