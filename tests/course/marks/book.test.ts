import { describe, expect, test } from 'vitest';
import { makeBook } from '../../../src/course/marks/book.ts';
import { chooseCoursework } from '../../../src/course/marks/class.ts';
import { makeResultGrader } from '../../../src/course/marks/grade-result.ts';
import { demoClass, demoCoursework, makeSolver } from './demo-class.ts';
import { folderSource } from './support.ts';

const source = folderSource();
const solver = makeSolver(demoCoursework, source);
const NOW = Date.UTC(2027, 2, 8);

test('time', () => {
  let t = performance.now();
  const results = demoClass(demoCoursework, solver, { learners: 60, goes: 14 });
  console.log('made', performance.now() - t); t = performance.now();
  const grader = makeResultGrader(demoCoursework, solver.slots, source);
  const graded = results.map((result, k) => ({ file: `${k}.json`, ...result, pieces: grader.grade({ file: `${k}.json`, result }) }));
  console.log('graded', performance.now() - t); t = performance.now();
  const chosen = chooseCoursework(graded, demoCoursework)!;
  const book = makeBook(chosen, solver.slots, graded, NOW);
  console.log('book', performance.now() - t);
  const bad = book.entries.flatMap(e => e.turns.filter(x => x.told !== x.marked.right).map(x => [e.code, x.slot, x.told, x.marked]));
  console.log(JSON.stringify(bad.slice(0, 5), null, 1), bad.length);
  console.log(book.entries.flatMap(e => e.flags).slice(0, 8));
});
