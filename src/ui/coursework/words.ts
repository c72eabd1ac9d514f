import type { Coursework, CourseworkTask } from '../../course/coursework/coursework.ts';
import type { SlotState, TaskOutcome } from '../../course/coursework/outcome.ts';
import type { Slot } from '../../course/coursework/slots.ts';
import { lessonsOf, type Outline } from '../../course/outline.ts';
import { DAY } from '../../course/progress/answers.ts';
import { timeOfDay } from '../../course/progress/day.ts';
import type { Names } from './names.ts';

/** “3 hints”, “1 hint”. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** What kind of task it is, in a word or two. */
export const kindWords: Readonly<Record<CourseworkTask['kind'], string>> = {
  lesson: 'Lesson',
  questions: 'Questions',
  job: 'Wiring job',
  callout: 'Callout',
  fault: 'Find a fault',
};

/** What a task is called. */
export function titleOf(task: CourseworkTask, outline: Outline, names: Names): string {
  switch (task.kind) {
    case 'lesson':
      return lessonsOf(outline).find(({ slug }) => slug === task.lesson)?.title ?? task.lesson;
    case 'questions':
      return task.title;
    case 'job':
      return names.jobs[task.job] ?? task.job;
    case 'callout':
      return names.callouts[task.callout] ?? task.callout;
    case 'fault':
      return names.systems[task.system] ?? task.system;
  }
}

/** What a slot is called beside its task: “Question 2”; alone in its task it goes by the task's kind. */
export const slotWords = (slot: Slot): string =>
  slot.kind === 'question'
    ? `Question ${slot.id.slice(slot.id.lastIndexOf('/') + 1)}`
    : kindWords[slot.task.kind];

/** A slot's full name: “What is live?, question 2”; alone in its task it goes by the task's title. */
export const fullTitle = (slot: Slot, outline: Outline, names: Names): string =>
  slot.kind === 'question'
    ? `${titleOf(slot.task, outline, names)}, ${slotWords(slot).toLowerCase()}`
    : titleOf(slot.task, outline, names);

/** What help the rules allow: “no hints”, “up to 2 hints”, “1 help with the search”. */
export function helpWords({ kind, task: { hints } }: Slot): string {
  if (kind === 'question') return hints === 0 ? 'no hints' : `up to ${counted(hints, 'hint')}`;
  const what = kind === 'job' ? '' : ' with the search';
  return hints === 0 ? `no help${what}` : `up to ${counted(hints, 'help')}${what}`;
}

/** What passes a task, how many goes there are and what help, in one line. */
export function rulesOf({ task, of, needs }: TaskOutcome, slot: Slot | undefined): string {
  const what =
    of === 1 ? '' : needs === of ? `All ${of} must be right. ` : `${needs} of ${of} must be right. `;
  const goes = `${counted(task.attempts, 'go', 'goes')}${of === 1 ? '' : ' at each'}`;
  return `${what}${goes}${slot ? `, ${helpWords(slot)}` : ''}.`;
}

/** What passes the whole. */
export const passOf = ({ tasks, pass = tasks.length }: Coursework): string =>
  tasks.length === 1
    ? 'It passes when the task passes.'
    : pass >= tasks.length
      ? `It passes when all ${tasks.length} tasks pass.`
      : `It passes when ${pass} of the ${tasks.length} tasks pass.`;

/** A slot's state, in a word, and its sign. */
export const stateWords: Readonly<Record<SlotState, string>> = {
  open: 'not tried yet',
  tried: 'not right yet, a go is left',
  lost: 'not right, no goes left',
  right: 'right',
};
export const stateSigns: Readonly<Record<SlotState, string>> = {
  open: '',
  tried: '…',
  lost: '✕',
  right: '✓',
};

const long = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

/** “31 March 2027”; what is no day stays as it is. */
export function dayWords(day: string): string {
  const at = timeOfDay(day);
  return at === undefined ? day : long.format(at);
}

/**
 * How far away a day is: “today”, “tomorrow”, “in 5 days”, “2 days ago”.
 * @param today the learner's own day, `2027-03-31`
 */
export function awayWords(day: string, today: string): string {
  const [to, from] = [timeOfDay(day), timeOfDay(today)];
  if (to === undefined || from === undefined) return '';
  const days = Math.round((to - from) / DAY);
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  return days > 0 ? `in ${days} days` : `${counted(-days, 'day')} ago`;
}

/** The learner's day, where they are. */
export const today = (at: number): string => {
  const date = new Date(at);
  return [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
};
