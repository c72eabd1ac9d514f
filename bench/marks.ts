import type { Coursework } from '../src/course/coursework/coursework.ts';
import type { Result } from '../src/course/coursework/work.ts';
import { makeBook } from '../src/course/marks/book.ts';
import { chooseCoursework } from '../src/course/marks/class.ts';
import { makeResultGrader } from '../src/course/marks/grade-result.ts';
import { headOf, wrongCircuits } from '../src/course/marks/mark-class.ts';
import { readHandedIn } from '../src/files/handed-in.ts';
import { writeResult } from '../src/files/result.ts';
import { demoClass, demoCoursework, makeSolver } from '../tests/course/marks/demo-class.ts';
import { folderSource } from '../tests/course/marks/support.ts';
import { atMost, type Figure, type Section, sayTime } from './figure.ts';
import { type Effort, processorTime } from './stopwatch.ts';

/** The class that the figures are for; so many learners of it are made up and measured, and the rest reckoned. */
const LEARNERS = 500;
const GOES = 20;
const MADE_UP = 100;
const SECOND = 1e9;

/** How long each step takes for the whole class, in nanoseconds of processor time. */
interface Taken {
  readonly read: number;
  readonly grade: number;
  readonly book: number;
  readonly compare: number;
}

function timeClass(coursework: Coursework, learners: number, goes: number): Taken {
  const source = folderSource();
  const solver = makeSolver(coursework, source);
  const files = demoClass(coursework, solver, { learners, goes }).map((result, k) => ({
    name: `${k}.json`,
    bytes: new TextEncoder().encode(writeResult(result, result.made)),
  }));
  const scale = LEARNERS / learners;
  const timed = <T>(what: () => T): [T, number] => {
    const start = process.cpuUsage();
    const done = what();
    return [done, processorTime(start) * scale];
  };
  const [results, read] = timed(() =>
    files.map((file) => ({ file: file.name, result: readHandedIn(file) as Result })),
  );
  // Judges and lists of faults of its own, as a page has them that was just opened.
  const grader = makeResultGrader(coursework, solver.slots, folderSource());
  const [graded, grade] = timed(() => results.map((one) => ({ ...headOf(one), pieces: grader.grade(one) })));
  const chosen = chooseCoursework(graded, coursework);
  if (!chosen) throw new Error('there is no coursework');
  const [, book] = timed(() => makeBook(chosen, solver.slots, graded, Date.now()));
  const works = new Map(results.map(({ file, result }) => [file, result.work]));
  const [, compare] = timed(() =>
    [...wrongCircuits(graded.flatMap(({ pieces }) => pieces)).values()].map(({ file, index }) => {
      const work = works.get(file)?.[index];
      return work ? grader.slips(work).length : 0;
    }),
  );
  return { read, grade, book, compare };
}

/** How long a class takes to be marked, by what it handed in, on one processor. */
export function timeMarks({ smoke }: Effort): Section {
  const only = (...kinds: string[]): Coursework => ({
    ...demoCoursework,
    tasks: demoCoursework.tasks.filter(({ kind }) => kinds.includes(kind)),
  });
  const whole = `${LEARNERS} learners × ${GOES}`;
  const [learners, goes] = smoke ? [2, 7] : [MADE_UP, GOES];
  const figures = (
    [
      ['wirings', only('job')],
      ['questions', only('questions')],
      ['visits', only('callout')],
      ['mixed: 9 questions, 9 wirings, 2 visits of 20', demoCoursework],
    ] as const
  ).flatMap(([what, coursework]): Figure[] => {
    const { read, grade, book, compare } = timeClass(coursework, learners, goes);
    const table = read + grade + book;
    const isVisits = what === 'visits';
    return [
      isVisits
        ? { what: `${whole} ${what}: to the table`, value: sayTime(table) }
        : atMost(`${whole} ${what}: to the table`, table, 5 * SECOND, sayTime),
      { what: '  of which reading the files', value: sayTime(read) },
      ...(compare > 0
        ? [{ what: '  and then the wrong wires, worked out behind it', value: sayTime(compare) }]
        : []),
    ];
  });
  return {
    title: `Mark book, one processor; a page shares the work among all it has (reckoned from ${learners} learners)`,
    figures,
  };
}
