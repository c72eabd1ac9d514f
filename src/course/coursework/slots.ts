import { seedOf } from '../random.ts';
import type { Level, Objective, Task } from '../task.ts';
import type { Coursework, CourseworkTask } from './coursework.ts';

/** One thing to do in a coursework: a question, a wiring job or a visit. Marks are counted in these. */
export type Slot = {
  /** The task's id and the number in it, from 1: `valves/2`. Works name it. */
  readonly id: string;
  readonly task: CourseworkTask;
  /** Id of what it shows: an objective of a lesson, `job-` and the job, `callout-` and the callout, `fault-` and the system, or `questions-` and the maker. */
  readonly objective: string;
} & (
  | { readonly kind: 'question'; readonly about: Task; readonly level: Level }
  | { readonly kind: 'job'; readonly job: string }
  | { readonly kind: 'callout'; readonly callout: string }
  | { readonly kind: 'fault'; readonly system: string; readonly level: Level }
);

type ObjectivesOf = (lesson: string) => readonly Objective[];

/** What there is to do for one task. */
function slotsIn(task: CourseworkTask, whole: string, objectivesOf: ObjectivesOf): Slot[] {
  const at = (k: number) => `${task.id}/${k + 1}`;
  switch (task.kind) {
    case 'lesson':
      // The same kind of question for everybody, so that a class can be compared.
      return objectivesOf(task.lesson).flatMap(({ id, tasks }, k): Slot[] => {
        const about = tasks[seedOf(`${whole}/${at(k)}`) % tasks.length];
        return about ? [{ id: at(k), task, objective: id, kind: 'question', about, level: 1 }] : [];
      });
    case 'questions': {
      const { about, level, count } = task;
      const objective = `questions-${about.make}`;
      const one = { task, objective, kind: 'question', about, level } as const;
      return Array.from({ length: count }, (_, k) => ({ id: at(k), ...one }));
    }
    case 'job':
      return [{ id: at(0), task, objective: `job-${task.job}`, kind: 'job', job: task.job }];
    case 'callout': {
      const { callout } = task;
      return [{ id: at(0), task, objective: `callout-${callout}`, kind: 'callout', callout }];
    }
    case 'fault': {
      const { system, level } = task;
      return [{ id: at(0), task, objective: `fault-${system}`, kind: 'fault', system, level }];
    }
  }
}

/**
 * Everything there is to do, in order.
 * @param objectivesOf the objectives of a lesson; throws a RangeError that names a lesson that is not there
 */
export const slotsOf = ({ id, seed, tasks }: Coursework, objectivesOf: ObjectivesOf): readonly Slot[] =>
  tasks.flatMap((task) => slotsIn(task, `${id}/${seed}`, objectivesOf));

/**
 * So many faults are dealt for one task. To make a fault of a level takes up to a second, so a mark book could not make
 * one anew for each of five hundred learners; among thirty learners, two who share a fault at an attempt do not know it.
 */
const FAULTS = 24;

/**
 * The seed of what a learner is given: 32 bits. A question is another one at each attempt. So is a fault, which is one of
 * a pool of the task's own. A job stays the same, for it is put right in several goes.
 */
export function variantSeed(
  { id, seed, variants }: Pick<Coursework, 'id' | 'seed' | 'variants'>,
  code: string,
  slot: Pick<Slot, 'id' | 'kind'>,
  attempt: number,
): number {
  const whose = variants === 'own' ? code : '';
  if (slot.kind === 'fault') {
    const place = (seedOf(`${id}/${seed}/${whose}/${slot.id}`) + attempt - 1) % FAULTS;
    return seedOf(`${id}/${seed}/${slot.id}/fault ${place}`);
  }
  const turn = slot.kind === 'job' ? 1 : attempt;
  return seedOf(`${id}/${seed}/${whose}/${slot.id}/${turn}`);
}
