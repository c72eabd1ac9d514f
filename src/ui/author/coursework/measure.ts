import type { CourseworkTask } from '../../../course/coursework/coursework.ts';
import type { Known } from '../known.ts';

/** Minutes that things take, about: assumptions of ours, for planning a lesson. */
const QUESTION = 1.5;
const JOB = { complete: 12, bare: 25, 'put-right': 15, convert: 20 } as const;
const VISIT = { 1: 10, 2: 15, 3: 20 } as const;

/** What a task is called, and a line on it. */
export function nameTask(
  task: CourseworkTask,
  known: Known,
): { readonly title: string; readonly says: string } {
  const system = (id: string) => known.systems.find((one) => one.id === id)?.title ?? id;
  switch (task.kind) {
    case 'lesson': {
      const lesson = known.lessons.find(({ slug }) => slug === task.lesson);
      return { title: lesson?.title ?? task.lesson, says: lesson?.part ?? '' };
    }
    case 'questions': {
      const { make, layouts, quiz, sum } = task.about;
      const maker = known.makers.find(({ id }) => id === make)?.title ?? make;
      const named =
        layouts?.map(system).join(', ') ??
        known.quizzes.find(({ id }) => id === quiz)?.title ??
        known.sums.find(({ id }) => id === sum)?.title ??
        '';
      return { title: task.title, says: named ? `${maker} ${named}` : maker };
    }
    case 'job': {
      const job = known.jobs.find(({ id }) => id === task.job);
      return { title: job?.title ?? task.job, says: job ? system(job.system) : '' };
    }
    case 'callout': {
      const callout = known.callouts.find(({ id }) => id === task.callout);
      return { title: callout?.title ?? task.callout, says: callout ? system(callout.system) : '' };
    }
    case 'fault':
      return { title: system(task.system), says: 'A fault of each learner’s own' };
  }
}

/** How many things there are to do in a task. */
export function slotCount(task: CourseworkTask, known: Known): number {
  if (task.kind === 'questions') return Number.isFinite(task.count) ? task.count : 0;
  if (task.kind === 'lesson') return known.lessons.find(({ slug }) => slug === task.lesson)?.objectives ?? 1;
  return 1;
}

/** Minutes that a task takes, about. */
export function minutesOf(task: CourseworkTask, known: Known): number {
  switch (task.kind) {
    case 'lesson':
      return known.lessons.find(({ slug }) => slug === task.lesson)?.minutes ?? 10;
    case 'questions':
      return slotCount(task, known) * QUESTION;
    case 'job':
      return JOB[known.jobs.find(({ id }) => id === task.job)?.kind ?? 'complete'];
    case 'callout':
      return VISIT[(known.callouts.find(({ id }) => id === task.callout)?.level ?? 2) as 1 | 2 | 3];
    case 'fault':
      return VISIT[task.level];
  }
}

/** Minutes in words: “about 45 minutes”, “about 2 hours”. */
export function sayMinutes(minutes: number): string {
  if (minutes < 90) return `about ${Math.max(5, Math.round(minutes / 5) * 5)} minutes`;
  const halves = Math.round(minutes / 30);
  return `about ${Math.floor(halves / 2)}${halves % 2 === 1 ? '½' : ''} hours`;
}
