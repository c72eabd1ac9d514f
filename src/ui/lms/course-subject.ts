import { calloutObjectives } from '../../course/callouts/objectives.ts';
import { type Outline, objectivesOf } from '../../course/outline.ts';
import { methodOf } from '../../course/progress/mix.ts';
import type { KeptStore } from '../../store/store.ts';
import { courseStanding } from './course-standing.ts';
import { trialInteractions } from './interactions.ts';
import { makeFresh, type Subject, UNREADABLE } from './subject.ts';
import { packCourse, unpackCourse } from './suspend/course.ts';

/** The whole course. */
export function courseSubject(store: KeptStore, outline: Outline, room: number): Subject {
  const fresh = makeFresh();
  const objectives = [...objectivesOf(outline), ...calloutObjectives].map(({ id, tasks: [task] }) => ({
    id,
    method: task ? methodOf(task) : 'visit',
  }));
  return {
    start: '/',
    restore: async (suspended) => {
      const trials = await store.trials();
      const routes = outline.routes.map(({ id }) => id);
      const memory = suspended === '' ? undefined : unpackCourse(suspended, objectives, routes, trials);
      if (memory) await store.merge({ ...memory, drafts: [], visits: [] });
      // What is here by now is no news to the platform.
      fresh(trialInteractions(outline, await store.trials()));
      return suspended === '' || memory ? undefined : UNREADABLE;
    },
    look: async () => {
      const [trials, choices] = await Promise.all([store.trials(), store.choices()]);
      const { solid, of, ...standing } = courseStanding(outline, trials);
      return {
        standing,
        says: `${solid} of ${of} solid`,
        suspend: packCourse({ trials, choices }, room),
        fresh: fresh(trialInteractions(outline, trials)),
      };
    },
  };
}
