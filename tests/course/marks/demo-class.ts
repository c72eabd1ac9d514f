import type { Coursework } from '../../../src/course/coursework/coursework.ts';
import { dealJob, dealQuestion, dealVisit, visitAddress } from '../../../src/course/coursework/deal.ts';
import { jobVariant, shareKept } from '../../../src/course/coursework/job-variant.ts';
import { type Slot, slotsOf, variantSeed } from '../../../src/course/coursework/slots.ts';
import type { GradeSource } from '../../../src/course/coursework/source.ts';
import type { Result, Work } from '../../../src/course/coursework/work.ts';
import type { Answer, Item } from '../../../src/course/item.ts';
import { sure } from '../../../src/course/marks/sure.ts';
import { objectivesOf } from '../../../src/course/outline.ts';
import { makeRandom, type Random } from '../../../src/course/random.ts';
import type { Act } from '../../../src/engine/diagnose/act.ts';
import { expertRoute } from '../../../src/engine/diagnose/expert.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { loadOutline } from '../../../src/files/site/course.ts';

/** A class that never was: its people, their mistakes and their tricks are made up by a seed. */

export const BEGUN = Date.UTC(2026, 2, 2, 9);
const outline = loadOutline();
const lessons = new Map(
  outline.parts.flatMap(({ lessons: own }) => own.map((lesson) => [lesson.slug, lesson.objectives] as const)),
);
export const objectives = (lesson: string) => {
  const found = lessons.get(lesson);
  if (!found) throw new RangeError(`expected a lesson, found "${lesson}"`);
  return found;
};
export const allObjectives = objectivesOf(outline);

/** A coursework with a bit of everything. */
export const demoCoursework: Coursework = {
  id: 'workshop-week',
  title: 'Workshop week',
  variants: 'own',
  seed: 20270301,
  tasks: [
    {
      id: 'numbers',
      kind: 'questions',
      title: 'What is live?',
      about: { make: 'live-terminals', layouts: ['three-port', 'two-two-ports'] },
      level: 1,
      count: 3,
      attempts: 2,
      hints: 1,
      pass: 2,
    },
    { id: 'wire-it', kind: 'job', job: 'unvented-three-port', attempts: 5, hints: 1 },
    { id: 'finish-it', kind: 'job', job: 'unvented-three-port-switching', attempts: 5, hints: 1 },
    { id: 'mend-it', kind: 'job', job: 'combi-one-zone-cold-taps', attempts: 5, hints: 1 },
    { id: 'call-out', kind: 'callout', callout: 'cold-showers', attempts: 2, hints: 0 },
  ],
};

/** Work that is right for a slot of a learner, or wrong in some way. */
export interface Solver {
  readonly slots: readonly Slot[];
  readonly source: GradeSource;
  readonly right: (slot: Slot, code: string, attempt: number) => Done;
  readonly wrong: (slot: Slot, code: string, attempt: number, random: Random) => Done;
}
type Done =
  | { readonly kind: 'question'; readonly item: string; readonly answer: Answer }
  | { readonly kind: 'job'; readonly wires: readonly Wire[] }
  | {
      readonly kind: 'visit';
      readonly callout: string;
      readonly acts: readonly Act[];
      readonly said: string;
    };

export function makeSolver(coursework: Coursework, source: GradeSource): Solver {
  const slots = slotsOf(coursework, objectives);
  const routes = new Map<string, { acts: readonly Act[]; said: string }>();

  /** The right wiring that keeps most of what the learner was given. */
  function solved(slot: Extract<Slot, { kind: 'job' }>, code: string): { right: Wire[]; wrongs: Wire[][] } {
    const { layout, variant } = dealJob(coursework, slot, code, source);
    const seed = variantSeed(coursework, code, slot, 1);
    // A job to complete deals nothing but numbers: so numbers are found for any wiring.
    const own = (given: readonly Wire[]): Wire[] => [
      ...jobVariant({ kind: 'complete', given, locked: false }, layout, source.judging(layout.id).judge, seed)
        .given,
    ];
    const all = layout.right.map(({ wires }) => own(wires));
    const right = sure(all.sort((a, b) => shareKept(variant, b) - shareKept(variant, a))[0]);
    return { right, wrongs: layout.wrong.map(({ wires }) => own(wires)) };
  }

  function route(slot: Extract<Slot, { kind: 'callout' | 'fault' }>, code: string, attempt: number) {
    const address = visitAddress(coursework, slot, code, attempt);
    const known = routes.get(address);
    if (known) return known;
    const { bench, callout, candidates } = source.visit(dealVisit(coursework, slot, code, attempt));
    const { entries } = expertRoute(bench, callout, candidates);
    const acts = entries.flatMap(({ step }): Act[] => [...step.acts, { do: 'test', test: step.test }]);
    const fresh = { acts, said: callout.fault.id };
    routes.set(address, fresh);
    return fresh;
  }

  return {
    slots,
    source,
    right(slot, code, attempt) {
      if (slot.kind === 'question') {
        const item = dealQuestion(coursework, slot, code, attempt, source);
        return { kind: 'question', item: item.id, answer: item.answer };
      }
      if (slot.kind === 'job') return { kind: 'job', wires: solved(slot, code).right };
      return {
        kind: 'visit',
        callout: visitAddress(coursework, slot, code, attempt),
        ...route(slot, code, attempt),
      };
    },
    wrong(slot, code, attempt, random) {
      if (slot.kind === 'question') {
        const item = dealQuestion(coursework, slot, code, attempt, source);
        return { kind: 'question', item: item.id, answer: wrongAnswer(item) };
      }
      if (slot.kind === 'job') {
        const { right, wrongs } = solved(slot, code);
        const { variant } = dealJob(coursework, slot, code, source);
        const locked = variant.locked ? variant.given : [];
        const classic = random.pick(wrongs);
        const holds = (wires: readonly Wire[]) => shareKept({ given: locked }, wires) === 1;
        if (holds(classic) && random.next() < 0.7) return { kind: 'job', wires: classic };
        const free = right.filter((wire) => shareKept({ given: [wire] }, locked) === 0);
        const gone = random.pick(free);
        return { kind: 'job', wires: right.filter((wire) => wire !== gone) };
      }
      const { acts } = route(slot, code, attempt);
      const { callout, candidates } = source.visit(dealVisit(coursework, slot, code, attempt));
      const said = random.pick(candidates.filter(({ id }) => id !== callout.fault.id)).id;
      return { kind: 'visit', callout: visitAddress(coursework, slot, code, attempt), acts, said };
    },
  };
}

function wrongAnswer({ form, answer }: Item): Answer {
  switch (form.kind) {
    case 'choice': {
      const right = answer.kind === 'choice' ? answer.chosen : [];
      return {
        kind: 'choice',
        chosen: form.options
          .map(({ id }) => id)
          .filter((id) => !right.includes(id))
          .slice(0, 1),
      };
    }
    case 'mark': {
      const right = answer.kind === 'mark' ? answer.marked : [];
      return {
        kind: 'mark',
        marked: form.among
          .map(({ id }) => id)
          .filter((id) => !right.includes(id))
          .slice(0, 1),
      };
    }
    case 'place':
      return { kind: 'place', landed: {} };
    case 'set':
      return { kind: 'set', settings: form.start };
    case 'order':
      return { kind: 'order', steps: answer.kind === 'order' ? [...answer.steps].reverse() : [] };
    default:
      return { kind: 'number', typed: '987654' };
  }
}

/** `AB-1`, `AB-2`, …: codes of a class. */
export const codeOf = (k: number): string => `AB-${k + 1}`;

export interface ClassOptions {
  readonly learners: number;
  /** Goes that each learner hands in, over the slots in turn. */
  readonly goes: number;
  readonly seed?: number;
  /** The share of goes that are wrong. */
  readonly wrong?: number;
}

/** The results of an honest class. */
export function demoClass(coursework: Coursework, solver: Solver, options: ClassOptions): Result[] {
  const { learners, goes, seed = 1, wrong = 0.4 } = options;
  return Array.from({ length: learners }, (_, k): Result => {
    const random = makeRandom(seed * 7919 + k);
    const code = codeOf(k);
    let at = BEGUN + random.int(3_600_000);
    const begun = at;
    const attempts = new Map<string, number>();
    const work = Array.from({ length: goes }, (_, n): Work => {
      const slot = sure(solver.slots[n % solver.slots.length]);
      const attempt = (attempts.get(slot.id) ?? 0) + 1;
      attempts.set(slot.id, attempt);
      const right = random.next() >= wrong;
      const done = right ? solver.right(slot, code, attempt) : solver.wrong(slot, code, attempt, random);
      const took = 60_000 + random.int(120_000);
      at += took + 5000 + random.int(20_000);
      return { slot: slot.id, attempt, at, took, hints: 0, right, ...done };
    });
    return { coursework, learner: { code, name: `Learner ${k + 1}` }, begun, made: at + 60_000, work };
  });
}
