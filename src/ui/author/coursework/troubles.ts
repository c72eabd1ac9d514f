import type { Coursework } from '../../../course/coursework/coursework.ts';
import { checkCoursework, courseworkSchema, MOST_SLOTS, readCoursework } from '../../../files/coursework.ts';
import { writeCoursework } from '../../../files/coursework-write.ts';
import { FileError } from '../../../files/error.ts';
import { shapeTroubles } from '../../../files/shape.ts';
import { parseYaml } from '../../../files/yaml.ts';
import type { Known } from '../known.ts';
import { type Trouble, troubleOf } from '../trouble.ts';
import { type CourseworkDraft, courseworkOf } from './draft.ts';
import { slotCount } from './measure.ts';

/** What is wrong with a draft: read by the parser that reads the file, and held against what the course has. */
export function courseworkTroubles(draft: CourseworkDraft, known: Known): Trouble[] {
  const file = `${draft.id || 'coursework'}.yaml`;
  const data = parseYaml(writeCoursework(courseworkOf(draft)), file);
  const shape = shapeTroubles(courseworkSchema, data, file);
  if (shape.length > 0) return shape.map(troubleOf);
  let coursework: Coursework;
  try {
    coursework = readCoursework(data, file);
  } catch (error) {
    if (error instanceof FileError) return [troubleOf(error)];
    throw error;
  }
  const names = checkCoursework(
    coursework,
    {
      lessons: known.lessons.map(({ slug }) => slug),
      jobs: known.jobs.map(({ id }) => id),
      callouts: known.callouts.map(({ id }) => id),
      systems: known.systems.map(({ id }) => id),
      layoutIds: known.systems.map(({ id }) => id),
      quizzes: known.quizzes.map(({ id }) => id),
      makers: known.makers,
    },
    file,
  ).map(troubleOf);
  return [...names, ...countTroubles(coursework, known)];
}

/** What only who knows the lessons can count. */
function countTroubles({ tasks }: Coursework, known: Known): Trouble[] {
  const troubles = tasks.flatMap((task, k): Trouble[] => {
    const most = slotCount(task, known);
    return (task.pass ?? 0) > most
      ? [
          {
            place: `tasks[${k}].pass`,
            says: `Expected at most ${most}: the task has no more; found ${task.pass}.`,
          },
        ]
      : [];
  });
  const slots = tasks.reduce((sum, task) => sum + slotCount(task, known), 0);
  if (slots > MOST_SLOTS)
    troubles.push({
      place: 'tasks',
      says: `Expected at most ${MOST_SLOTS} questions, jobs and visits together; found ${slots}.`,
    });
  return troubles;
}

const names: Readonly<Record<string, string>> = {
  id: 'Name of the file',
  title: 'Title',
  says: 'What learners are told',
  opens: 'Opens',
  due: 'To be handed in by',
  seed: 'Seed',
  pass: 'What passes the whole',
  tasks: 'Tasks',
};
const ofTask: Readonly<Record<string, string>> = {
  title: 'title',
  count: 'how many',
  attempts: 'attempts',
  hints: 'helps',
  pass: 'must be right',
  about: 'what is asked',
  level: 'level',
  id: 'name in results',
};

/** What a form calls the place of a trouble. */
export function nameOfPlace(place: string): string {
  const [, number, key] = /^tasks\[(\d+)\](?:\.([a-z]+))?/.exec(place) ?? [];
  if (number !== undefined)
    return `Task ${Number(number) + 1}${key === undefined ? '' : `, ${ofTask[key] ?? key}`}`;
  return names[place] ?? place;
}
