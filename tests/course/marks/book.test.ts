import { beforeAll, describe, expect, test } from 'vitest';
import type { Coursework } from '../../../src/course/coursework/coursework.ts';
import type { Result, Work } from '../../../src/course/coursework/work.ts';
import type { Book, Entry } from '../../../src/course/marks/book.ts';
import { chooseCoursework } from '../../../src/course/marks/class.ts';
import type { FlagKind } from '../../../src/course/marks/flag.ts';
import { markClass } from '../../../src/course/marks/mark-class.ts';
import { rulesBroken, slipsMade, slotCounts } from '../../../src/course/marks/summary.ts';
import { sure } from '../../../src/course/marks/sure.ts';
import { makeRandom } from '../../../src/course/random.ts';
import { BEGUN, codeOf, demoClass, demoCoursework, makeSolver, type Solver } from './demo-class.ts';
import { folderSource } from './support.ts';

/* A class of twelve honest learners; each test spoils one or two of them and looks what the book says. */
const source = folderSource();
const NOW = BEGUN + 7 * 86_400_000;
let solver: Solver;
let honest: Result[];
beforeAll(() => {
  solver = makeSolver(demoCoursework, source);
  honest = demoClass(demoCoursework, solver, { learners: 12, goes: 11 });
}, 120_000);

/** The class with some results changed: by the learner's number, from 0. */
const spoiled = (changes: Readonly<Record<number, (result: Result) => Result>>): Result[] =>
  honest.map((result, k) => changes[k]?.(result) ?? result);

function bookOf(results: readonly Result[], tutors: Coursework | undefined = demoCoursework): Book {
  const chosen = chooseCoursework(results, tutors);
  if (!chosen) throw new Error('there is no coursework');
  const reads = results.map((result, k) => ({ file: `${k}.json`, result }));
  return markClass(chosen, solver.slots, source, reads, NOW).book;
}
const entryOf = (book: Book, k: number): Entry => {
  const entry = book.entries.find(({ code }) => code === codeOf(k));
  if (!entry) throw new Error(`${codeOf(k)} is not in the book`);
  return entry;
};
const flagged = (book: Book, kind: FlagKind) =>
  book.entries.flatMap(({ code, flags }) => flags.filter((flag) => flag.kind === kind).map(() => code));
const workOf = (result: Result, slot: string, change: (work: Work) => Work): Result => ({
  ...result,
  work: result.work.map((work) => (work.slot === slot ? change(work) : work)),
});

describe('an honest class', () => {
  test('is marked as its pages told it, and nothing but shared slips is worth a look', () => {
    const book = bookOf(honest);
    const strong = book.entries.flatMap(({ flags }) => flags.filter(({ weight }) => weight !== 'weak'));
    expect(strong).toEqual([]);
    const turns = book.entries.flatMap((entry) => entry.turns);
    expect(turns).toHaveLength(12 * 11);
    // A wire that the made-up learner leaves out may be one that is not needed: told wrong, is right.
    expect(turns.filter((turn) => turn.told && !turn.marked.right)).toEqual([]);
    expect(turns.every(({ marked }) => marked.made === 'as dealt')).toBe(true);
  });

  test('comes out by learner and by slot, with the rules that were broken', () => {
    const book = bookOf(honest);
    expect(book.entries.map(({ code }) => code)).toEqual(honest.map((_, k) => codeOf(k)));
    for (const { right, wrong, open } of slotCounts(book)) expect(right + wrong + open).toBe(12);
    const broken = new Set(book.entries.flatMap(({ turns }) => turns.flatMap(({ marked }) => marked.rules)));
    const counted = rulesBroken(book);
    expect(new Set(counted.map(({ rule }) => rule))).toEqual(broken);
    expect(counted.map(({ codes }) => codes.length)).toEqual(
      counted.map(({ codes }) => codes.length).sort((a, b) => b - a),
    );
  });
});

test('an edited mark gains nothing and is told', () => {
  const before = entryOf(bookOf(honest), 3).outcome.right;
  const edited = { ...sure(honest[3]), work: sure(honest[3]).work.map((work) => ({ ...work, right: true })) };
  const wrongOnes = sure(honest[3]).work.filter(({ right }) => !right).length;
  expect(wrongOnes).toBeGreaterThan(0);
  const book = bookOf(spoiled({ 3: () => edited }));
  expect(entryOf(book, 3).outcome.right).toBe(before);
  expect(flagged(book, 'told')).toEqual([codeOf(3)]);
});

describe('copied work', () => {
  /** Hands in another learner's work as one's own. */
  const copyOf =
    (k: number) =>
    (result: Result): Result => ({ ...result, work: sure(honest[k]).work });

  test('of all slots: nothing of it counts but what everybody shares, and it is said whose it is', () => {
    const book = bookOf(spoiled({ 5: copyOf(2) }));
    const entry = entryOf(book, 5);
    const own = ['call-out/1'];
    for (const [slot, state] of entry.outcome.states)
      if (!own.includes(slot) && !slot.startsWith('mend-it')) expect(state, slot).not.toBe('right');
    const another = entry.flags.filter(({ kind }) => kind === 'another');
    expect(another.length).toBeGreaterThanOrEqual(4);
    for (const { others, says } of another) {
      expect(others).toEqual([codeOf(2)]);
      expect(says).toContain(`fits what ${codeOf(2)} was given`);
      expect(says).not.toMatch(/cheat|guilt|fraud/i);
    }
    // The one who was copied from has done nothing that shows.
    expect(entryOf(book, 2).flags.filter(({ kind }) => kind === 'another')).toEqual([]);
  });

  test('the same wires on a strip that is numbered otherwise: both are named', () => {
    const wires = sure(honest[2]).work.find(({ slot }) => slot === 'wire-it/1');
    if (wires?.kind !== 'job') throw new Error('there is no wiring');
    const book = bookOf(
      spoiled({
        5: (result) =>
          workOf(result, 'wire-it/1', (work) => ({ ...work, kind: 'job', wires: wires.wires }) as Work),
      }),
    );
    expect(flagged(book, 'same-wiring')).toEqual([codeOf(2), codeOf(5)]);
    const [flag] = entryOf(book, 5).flags.filter(({ kind }) => kind === 'same-wiring');
    expect(flag?.says).toContain(`It fits what ${codeOf(2)} was given`);
  });

  test('with shared variants the same right wiring is no sign of anything', () => {
    const shared: Coursework = { ...demoCoursework, variants: 'same' };
    const class2 = makeSolver(shared, source);
    const results = demoClass(shared, class2, { learners: 6, goes: 8, wrong: 0 });
    const book = bookOf(results, shared);
    expect(flagged(book, 'same-wiring')).toEqual([]);
    expect(flagged(book, 'another')).toEqual([]);
    expect(book.entries.every(({ outcome }) => outcome.passed)).toBe(true);
  });
});

describe('times that hands do not have', () => {
  const quickly = (result: Result): Result => ({
    ...result,
    work: result.work.map((work) => ({ ...work, took: 300 })),
  });

  test('are told for each kind of work, with the least time that is assumed', () => {
    const book = bookOf(spoiled({ 1: quickly }));
    const quick = entryOf(book, 1).flags.filter(({ kind }) => kind === 'quick');
    expect(flagged(book, 'quick').every((code) => code === codeOf(1))).toBe(true);
    expect(quick.length).toBeGreaterThanOrEqual(8);
    expect(quick[0]?.says).toMatch(/in 0\.3\u00a0s; hands need .* at least, we assume/);
  });

  test('work before the start, after the file, and in the future is told', () => {
    const shift =
      (by: number) =>
      (result: Result): Result => ({
        ...result,
        work: result.work.map((work) => ({ ...work, at: work.at + by })),
      });
    const hour = 3_600_000;
    const book = bookOf(
      spoiled({
        0: shift(-24 * hour),
        1: shift(24 * hour),
        2: (result) => ({ ...result, made: NOW + 24 * hour }),
        3: (result) => ({ ...result, made: result.begun - hour, work: [] }),
      }),
    );
    const says = (k: number) =>
      entryOf(book, k)
        .flags.map((flag) => flag.says)
        .join(' ');
    expect(says(0)).toContain('was finished before the coursework was begun');
    expect(says(1)).toContain('was made before');
    expect(says(2)).toContain('a time that has not come yet');
    expect(says(3)).toContain('made before the coursework was begun');
    expect(new Set(flagged(book, 'clock'))).toEqual(new Set([0, 1, 2, 3].map(codeOf)));
  });

  test('two things at once, and a later go with an earlier time', () => {
    const [first, ...others] = sure(honest[4]).work;
    const overlapping = [
      sure(first),
      ...others.map((work) => ({ ...work, at: sure(first).at + 10, took: sure(first).took })),
    ];
    const turned = sure(honest[6]).work.map((work) => ({
      ...work,
      at: 2 * sure(honest[6]).begun - work.at + 10 ** 7,
    }));
    const book = bookOf(
      spoiled({
        4: (result) => ({ ...result, work: overlapping }),
        6: (result) => ({ ...result, work: turned }),
      }),
    );
    expect(flagged(book, 'overlap')).toContain(codeOf(4));
    expect(flagged(book, 'order')).toContain(codeOf(6));
  });
});

describe('several files of one learner', () => {
  test('count once: the same work handed in again, early and late', () => {
    const early = {
      ...sure(honest[0]),
      work: sure(honest[0]).work.slice(0, 5),
      made: sure(honest[0]).made - 1000,
    };
    const book = bookOf([...honest, early]);
    expect(entryOf(book, 0).turns).toHaveLength(11);
    expect(entryOf(book, 0).files).toHaveLength(2);
    expect(entryOf(book, 0).flags.filter(({ weight }) => weight !== 'weak')).toEqual([]);
  });

  test('do not give more goes: those beyond the allowed ones do not count', () => {
    const slot = 'numbers/1';
    const wrong = sure(sure(honest[0]).work.find((work) => work.slot === slot));
    const goes = (from: number, right: boolean): Result => ({
      ...sure(honest[0]),
      work: [1, 2].map(
        (attempt): Work => ({
          ...(right
            ? solver.right(sure(solver.slots[0]), codeOf(0), attempt)
            : solver.wrong(sure(solver.slots[0]), codeOf(0), attempt, makeRandom(attempt))),
          slot,
          attempt,
          at: wrong.at + from + attempt * 60_000,
          took: 30_000,
          hints: 0,
          right,
        }),
      ),
      made: wrong.at + 10 ** 7,
    });
    const book = bookOf([goes(0, false), goes(10 ** 6, true)]);
    const entry = entryOf(book, 0);
    expect(entry.turns.map(({ turn, counts, marked }) => [turn, counts, marked.right])).toEqual([
      [1, true, false],
      [2, true, false],
      [3, false, true],
      [4, false, true],
    ]);
    expect(entry.outcome.states.get(slot)).toBe('lost');
    expect(flagged(book, 'more-goes')).toEqual([codeOf(0)]);
  });

  test('that hold the same moment with different work, or other names, are told', () => {
    const other = workOf(
      { ...sure(honest[0]), learner: { code: codeOf(0), name: 'Somebody Else' } },
      'wire-it/1',
      (work) => (work.kind === 'job' ? { ...work, wires: work.wires.slice(1) } : work),
    );
    const book = bookOf([...honest, other]);
    expect(flagged(book, 'edited')).toEqual([codeOf(0)]);
    expect(flagged(book, 'names')).toEqual([codeOf(0)]);
  });
});

describe('the coursework', () => {
  const easier: Coursework = {
    ...demoCoursework,
    tasks: demoCoursework.tasks.map((task) => ({ ...task, attempts: 10, hints: 3 })),
  };

  test('is the tutor’s where there is one: a result with an easier one is marked by it, and named', () => {
    const book = bookOf(spoiled({ 7: (result) => ({ ...result, coursework: easier }) }));
    expect(book.chosen).toMatchObject({ by: 'tutor', same: 11, differing: 1 });
    expect(flagged(book, 'differs')).toEqual([codeOf(7)]);
  });

  test('is the one that most results carry when the tutor gives none', () => {
    const results = spoiled({ 7: (result) => ({ ...result, coursework: easier }) });
    expect(chooseCoursework(results)).toMatchObject({ by: 'results', same: 11, coursework: demoCoursework });
    const words = { ...demoCoursework, title: 'Another title', due: '2027-01-01' };
    expect(chooseCoursework([...results, { ...sure(honest[0]), coursework: words }])).toMatchObject({
      same: 12,
    });
  });

  test('of another name puts a result aside', () => {
    const book = bookOf(
      spoiled({ 9: (result) => ({ ...result, coursework: { ...demoCoursework, id: 'other' } }) }),
    );
    expect(book.others).toEqual(['9.json']);
    expect(book.entries).toHaveLength(11);
  });
});

test('the most common wrong wire is the one that most learners have, whatever their numbers', () => {
  const layout = source.layout('unvented-three-port');
  const results = demoClass(demoCoursework, solver, { learners: 10, goes: 0 }).map((result, k): Result => {
    const { right } = solver;
    const done = right(sure(solver.slots.find(({ id }) => id === 'wire-it/1')), codeOf(k), 1);
    if (done.kind !== 'job') throw new Error('there is no wiring');
    const gone = k < 7 ? 'pump/N' : 'boiler/N';
    const wires = done.wires.filter((wire) => !wire.includes(gone));
    return {
      ...result,
      work: [
        {
          slot: 'wire-it/1',
          attempt: 1,
          at: BEGUN + 10 ** 6,
          took: 60_000,
          hints: 0,
          right: false,
          kind: 'job',
          wires,
        },
      ],
    };
  });
  const chosen = sure(chooseCoursework(results, demoCoursework));
  const reads = results.map((result, k) => ({ file: `${k}.json`, result }));
  const { book, slips } = markClass(chosen, solver.slots, source, reads, NOW);
  const [most, next] = slipsMade(book, slips);
  expect(most?.codes).toHaveLength(7);
  expect(most?.slip.missing).toContain('pump/N');
  expect(next?.codes).toHaveLength(3);
  const own = layout.right.flatMap(({ wires }) => wires).map((wire) => [...wire].sort().join());
  expect(own).toContain([...sure(sure(most).slip.missing)].sort().join());
});
