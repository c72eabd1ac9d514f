import type { Coursework, CourseworkTask } from '../course/coursework/coursework.ts';
import type { Maker } from '../course/task.ts';
import { FileError, show } from './error.ts';
import { placeAt } from './place.ts';
import { oneOf } from './suggest.ts';

/** The names that a coursework may use. */
export interface Known {
  /** Slugs of lessons. */
  readonly lessons: readonly string[];
  readonly jobs: readonly string[];
  readonly callouts: readonly string[];
  /** Ids of systems in which a fault can be found. */
  readonly systems: readonly string[];
  /** Ids of layouts that questions can be about. */
  readonly layoutIds: readonly string[];
  readonly quizzes: readonly string[];
  /** What makes questions, and what each needs named. */
  readonly makers: readonly Pick<Maker, 'id' | 'needs'>[];
}

type Path = readonly PropertyKey[];
type Fail = (path: Path, expected: string, found: string) => void;

/** Every name in a coursework that nothing bears, with the nearest that is there. */
export function checkCoursework({ tasks }: Coursework, known: Known, file: string): FileError[] {
  const troubles: FileError[] = [];
  const fail: Fail = (path, expected, found) =>
    troubles.push(new FileError({ file, place: placeAt(path), expected, found }));
  tasks.forEach((task, k) => {
    checkTask(task, known, ['tasks', k], fail);
  });
  return troubles;
}

function checkTask(task: CourseworkTask, known: Known, at: Path, fail: Fail): void {
  const named = (path: Path, name: string, all: readonly string[]) => {
    if (!all.includes(name)) fail([...at, ...path], oneOf(name, all), show(name));
  };
  switch (task.kind) {
    case 'lesson':
      named(['lesson'], task.lesson, known.lessons);
      return;
    case 'job':
      named(['job'], task.job, known.jobs);
      return;
    case 'callout':
      named(['callout'], task.callout, known.callouts);
      return;
    case 'fault':
      named(['system'], task.system, known.systems);
      return;
    case 'questions': {
      const { make, layouts, quiz } = task.about;
      const ids = known.makers.map(({ id }) => id);
      named(['about', 'make'], make, ids);
      const maker = known.makers.find(({ id }) => id === make);
      const needed = maker && (maker.needs === 'layout' ? 'layouts' : maker.needs);
      if (needed && task.about[needed] === undefined)
        fail([...at, 'about'], `${needed}, for ${make}`, 'none');
      for (const [k, id] of (layouts ?? []).entries()) named(['about', 'layouts', k], id, known.layoutIds);
      if (quiz !== undefined) named(['about', 'quiz'], quiz, known.quizzes);
    }
  }
}
