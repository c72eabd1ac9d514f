import type { Coursework, CourseworkTask } from '../../../course/coursework/coursework.ts';

/** A coursework while it is made: what may be left out is empty here. */
export interface CourseworkDraft extends Pick<Coursework, 'id' | 'title' | 'variants' | 'seed' | 'tasks'> {
  readonly says: string;
  readonly opens: string;
  readonly due: string;
  /** How many tasks must pass; 0 for all. */
  readonly pass: number;
}

/** The rules that a first task has. */
const FIRST = { attempts: 3, hints: 1 } as const;

export const freshCoursework = (seed: number): CourseworkDraft => ({
  id: '',
  title: '',
  says: '',
  opens: '',
  due: '',
  variants: 'own',
  seed,
  pass: 0,
  tasks: [],
});

/** The coursework as its file says it. */
export const courseworkOf = ({ says, opens, due, pass, ...rest }: CourseworkDraft): Coursework => ({
  ...rest,
  ...(says.trim() !== '' && { says }),
  ...(opens !== '' && { opens }),
  ...(due !== '' && { due }),
  ...(pass !== 0 && { pass }),
});

/** A coursework opened to be changed. */
export const draftOf = ({
  says = '',
  opens = '',
  due = '',
  pass = 0,
  ...rest
}: Coursework): CourseworkDraft => ({
  ...rest,
  says,
  opens,
  due,
  pass,
});

/** A draft as it was kept, or undefined for what is none. */
export function readCourseworkDraft(data: unknown): CourseworkDraft | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { id, title, says, opens, due, variants, seed, pass, tasks } = data as Partial<
    Record<keyof CourseworkDraft, unknown>
  >;
  if (![id, title, says, opens, due].every((text) => typeof text === 'string')) return undefined;
  if (typeof seed !== 'number' || typeof pass !== 'number') return undefined;
  if ((variants !== 'own' && variants !== 'same') || !Array.isArray(tasks) || !tasks.every(isTask))
    return undefined;
  return data as CourseworkDraft;
}

const named = {
  lesson: 'lesson',
  job: 'job',
  callout: 'callout',
  fault: 'system',
  questions: 'title',
} as const;

function isTask(data: unknown): boolean {
  if (typeof data !== 'object' || data === null || !('kind' in data)) return false;
  const task = data as Record<string, unknown>;
  if (typeof task.id !== 'string' || !Object.hasOwn(named, String(task.kind))) return false;
  if (typeof task[named[task.kind as keyof typeof named]] !== 'string') return false;
  const about = task.about as { readonly make?: unknown } | undefined;
  return task.kind !== 'questions' || typeof about?.make === 'string';
}

/** What a task is about, before it has its id and its rules. */
export type TaskSubject = CourseworkTask extends infer T
  ? T extends CourseworkTask
    ? Omit<T, 'id' | 'attempts' | 'hints' | 'pass'>
    : never
  : never;

/** A name for a task in results: of what it is about, and a number where that is taken. */
function freshTaskId(subject: TaskSubject, tasks: readonly CourseworkTask[]): string {
  const base =
    subject.kind === 'questions'
      ? subject.about.make
      : subject.kind === 'fault'
        ? `fault-${subject.system}`
        : subject.kind === 'lesson'
          ? subject.lesson
          : subject.kind === 'job'
            ? subject.job
            : subject.callout;
  const taken = new Set(tasks.map(({ id }) => id));
  for (let k = 1; ; k++) {
    const id = k === 1 ? base : `${base}-${k}`;
    if (!taken.has(id)) return id;
  }
}

/** The tasks with one more at the end, under the rules of the one before. */
export function withTask(tasks: readonly CourseworkTask[], subject: TaskSubject): CourseworkTask[] {
  const { attempts, hints } = tasks.at(-1) ?? FIRST;
  return [...tasks, { ...subject, id: freshTaskId(subject, tasks), attempts, hints } as CourseworkTask];
}

/** The tasks with one changed; a `pass` of 0 means all of it. */
export function withChange(
  tasks: readonly CourseworkTask[],
  id: string,
  change: { readonly [key: string]: unknown },
): CourseworkTask[] {
  return tasks.map((task) => {
    if (task.id !== id) return task;
    const { pass, ...rest } = { ...task, ...change } as CourseworkTask;
    return (pass === undefined || pass === 0 ? rest : { ...rest, pass }) as CourseworkTask;
  });
}
