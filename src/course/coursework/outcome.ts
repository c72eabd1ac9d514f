import type { Coursework, CourseworkTask } from './coursework.ts';
import type { Slot } from './slots.ts';
import type { Work } from './work.ts';

/** How a slot stands: not tried, tried in vain with goes left, lost (none left), or right. */
export type SlotState = 'open' | 'tried' | 'lost' | 'right';

export interface TaskOutcome {
  readonly task: CourseworkTask;
  readonly right: number;
  readonly of: number;
  readonly needs: number;
  readonly passed: boolean;
}

export interface Outcome {
  readonly states: ReadonlyMap<string, SlotState>;
  readonly tasks: readonly TaskOutcome[];
  /** Slots right, and how many there are. */
  readonly right: number;
  readonly of: number;
  readonly passed: boolean;
  /** Nothing is left that could still be answered. */
  readonly over: boolean;
}

/** A piece of work, and whether it is right: as the page told the learner, or as the mark book finds. */
export type Told = Pick<Work, 'slot' | 'attempt' | 'hints' | 'right'>;

/** Whether a piece of work is within the rules of its slot. */
export const counts = ({ task: { attempts, hints } }: Slot, work: Pick<Work, 'attempt' | 'hints'>): boolean =>
  work.attempt <= attempts && work.hints <= hints;

/** What a sitting comes to. Work on slots that the coursework does not have is passed over. */
export function outcomeOf(
  { tasks, pass = tasks.length }: Coursework,
  slots: readonly Slot[],
  work: readonly Told[],
): Outcome {
  const bySlot = Map.groupBy(work, ({ slot }) => slot);
  const states = new Map(
    slots.map((slot): [string, SlotState] => {
      const done = bySlot.get(slot.id) ?? [];
      if (done.some((one) => one.right && counts(slot, one))) return [slot.id, 'right'];
      const used = new Set(done.map(({ attempt }) => attempt)).size;
      return [slot.id, used === 0 ? 'open' : used < slot.task.attempts ? 'tried' : 'lost'];
    }),
  );
  const outcomes = tasks.map((task): TaskOutcome => {
    const own = slots.filter((slot) => slot.task.id === task.id);
    const right = own.filter(({ id }) => states.get(id) === 'right').length;
    const needs = Math.min(task.pass ?? own.length, own.length);
    return { task, right, of: own.length, needs, passed: right >= needs };
  });
  const all = [...states.values()];
  return {
    states,
    tasks: outcomes,
    right: all.filter((state) => state === 'right').length,
    of: slots.length,
    passed: outcomes.filter(({ passed }) => passed).length >= Math.min(pass, tasks.length),
    over: all.every((state) => state === 'right' || state === 'lost'),
  };
}
