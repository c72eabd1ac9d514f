import type { Coursework } from '../../course/coursework/coursework.ts';
import { outcomeOf, type Told } from '../../course/coursework/outcome.ts';
import { type Slot, slotsOf } from '../../course/coursework/slots.ts';
import { sittingId, type Work } from '../../course/coursework/work.ts';
import { lessonsOf, type Outline } from '../../course/outline.ts';
import { writeCourseworkHash } from '../../files/coursework-link.ts';
import { unitedSitting } from '../../store/sittings.ts';
import type { KeptStore } from '../../store/store.ts';
import { workInteractions } from './interactions.ts';
import { courseworkLearner } from './learner.ts';
import type { Standing } from './report.ts';
import { makeFresh, type Subject, UNREADABLE } from './subject.ts';
import { packCoursework, type SlotMemory, statesOf, unpackCoursework } from './suspend/coursework.ts';

/** What there is to do, as the outline of the course says it. */
export function slotsIn(coursework: Coursework, outline: Outline): readonly Slot[] {
  const objectives = new Map(lessonsOf(outline).map((lesson) => [lesson.slug, lesson.objectives]));
  return slotsOf(coursework, (lesson) => {
    const found = objectives.get(lesson);
    if (!found) throw new RangeError(`expected a lesson of the course, found "${lesson}"`);
    return found;
  });
}

/** Goes at slots whose work is no longer at hand, so that they count. */
const toldOf = (states: ReadonlyMap<string, SlotMemory>): Told[] =>
  [...states].flatMap(([slot, { used, right }]) =>
    Array.from({ length: used }, (_, k) => ({
      slot,
      attempt: k + 1,
      hints: 0,
      right: right && k === 0,
    })),
  );

/** A coursework is passed as its rules say; it is failed only when nothing is left that could be answered. */
export function courseworkStanding(
  coursework: Coursework,
  slots: readonly Slot[],
  work: readonly Work[],
  states: ReadonlyMap<string, SlotMemory>,
): Standing & { readonly right: number; readonly of: number } {
  const told = toldOf(statesOf(slots, work, states));
  const { right, of, passed, over, states: now } = outcomeOf(coursework, slots, told);
  const done = [...now.values()].filter((state) => state === 'right' || state === 'lost').length;
  return {
    score: of === 0 ? 0 : right / of,
    progress: of === 0 ? 0 : done / of,
    status: passed ? 'passed' : over ? 'failed' : 'incomplete',
    right,
    of,
  };
}

/** One coursework, for the learner whom the platform names. */
export function courseworkSubject(
  store: KeptStore,
  outline: Outline,
  room: number,
  coursework: Coursework,
  who: { readonly id: string; readonly name: string },
): Subject {
  const learner = courseworkLearner(who);
  const { code, name } = learner;
  const slots = slotsIn(coursework, outline);
  const fresh = makeFresh();
  const id = sittingId(coursework, learner);
  let remembered: ReadonlyMap<string, SlotMemory> = new Map();

  return {
    start: `/coursework/${writeCourseworkHash({ coursework, code, ...(name !== undefined && { name }) })}`,
    restore: async (suspended) => {
      const here = await store.sitting(id);
      const memory = suspended === '' ? undefined : unpackCoursework(suspended, { coursework, slots, code });
      let sitting = here;
      if (memory && memory.work.length > 0) {
        const { begun, work } = memory;
        const kept = { id, coursework, learner, begun, at: Math.max(...work.map(({ at }) => at)), work };
        sitting = here ? unitedSitting(kept, here) : kept;
        if (sitting.work.length > (here?.work.length ?? 0)) await store.keepSitting(sitting);
      }
      const work = sitting?.work ?? [];
      remembered = memory?.states ?? remembered;
      fresh(workInteractions(slots, work));
      const right = new Set(work.filter((one) => one.right).map(({ slot }) => slot));
      const lost = [...remembered].filter(([slot, state]) => state.right && !right.has(slot)).length;
      if (lost > 0) return lostWords(lost);
      return suspended === '' || memory ? undefined : UNREADABLE;
    },
    look: async () => {
      const sitting = await store.sitting(id);
      const work = sitting?.work ?? [];
      const { right, of, ...standing } = courseworkStanding(coursework, slots, work, remembered);
      const dealt = { coursework, slots, code, begun: sitting?.begun ?? 0 };
      return {
        standing,
        says: `${right} of ${of} right`,
        suspend: packCoursework(dealt, { work, states: remembered }, room),
        fresh: fresh(workInteractions(slots, work)),
      };
    },
  };
}

const lostWords = (count: number): string =>
  `Your learning platform keeps little: ${count} of your right answers ${count === 1 ? 'is' : 'are'} on your other device only, and ${count === 1 ? 'counts' : 'count'} all the same.`;
