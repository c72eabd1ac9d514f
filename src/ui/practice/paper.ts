import { makeRandom, seedOf } from '../../course/random.ts';
import type { Level, Objective, Task } from '../../course/task.ts';
import type { Question } from '../items/question.ts';

/** How many questions stand on a worksheet. */
const LEAST = 4;
const MOST = 8;
/** How many seeds are tried for a question that does not stand there yet. */
const TRIES = 12;

/** Tasks of a worksheet: each objective in turn, and of each its tasks in turn. */
export function paperTasks(objectives: readonly Pick<Objective, 'tasks'>[]): readonly Task[] {
  const asking = objectives.filter(({ tasks }) => tasks.length > 0);
  const all = asking.reduce((sum, { tasks }) => sum + tasks.length, 0);
  const count = asking.length === 0 ? 0 : Math.min(MOST, Math.max(LEAST, all));
  return Array.from({ length: count }, (_, k) => {
    const { tasks } = asking[k % asking.length] as Pick<Objective, 'tasks'>;
    return tasks[Math.floor(k / asking.length) % tasks.length] as Task;
  });
}

/** A question to choose from is the same one whichever wrong options stand beside the right one. */
const alike = ({ ask, form }: Question): string =>
  form.kind === 'choice' ? ask : `${ask} ${JSON.stringify(form)}`;

/**
 * The questions of a worksheet, no two alike. The same words always give the same sheet.
 * @param make makes the question of a task
 */
export function paperSet(
  tasks: readonly Task[],
  words: string,
  make: (task: Task, seed: number, level: Level) => Question,
): readonly Question[] {
  const { int } = makeRandom(seedOf(words));
  const questions: Question[] = [];
  tasks.forEach((task, k) => {
    for (let attempt = 0; attempt < TRIES; attempt++) {
      const question = make(task, int(2 ** 32), k < tasks.length / 2 ? 1 : 2);
      if (questions.some((other) => alike(other) === alike(question))) continue;
      questions.push(question);
      return;
    }
  });
  return questions;
}
