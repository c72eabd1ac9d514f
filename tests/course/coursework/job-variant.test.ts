import { describe, expect, test } from 'vitest';
import {
  type JobGiven,
  jobVariant,
  lockedMissing,
  shareKept,
} from '../../../src/course/coursework/job-variant.ts';
import { variantSeed } from '../../../src/course/coursework/slots.ts';
import type { Layout } from '../../../src/course/layout.ts';
import { isSameCircuit } from '../../../src/engine/grade/change.ts';
import { judgeFor } from '../../../src/engine/grade/judge-for.ts';
import { type Wire, wireKey } from '../../../src/engine/model/wiring.ts';
import { jobStart } from '../../../src/files/job-start.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { jobPages } from '../../../src/files/site/jobs.ts';

const shelf = loadShelf();
const judges = new Map<string, ReturnType<typeof judgeFor>['judge']>();
const judgeOf = (layout: Layout) => {
  const judge = judges.get(layout.id) ?? judgeFor(layout.system).judge;
  judges.set(layout.id, judge);
  return judge;
};
const jobs = jobPages().map(({ job, given, was }) => jobStart(job, given, was));
const coursework = { id: 'class', seed: 11, variants: 'own' } as const;
const seedFor = (code: string, job: string) => variantSeed(coursework, code, { id: job, kind: 'job' }, 1);
const variant = (job: JobGiven & { id: string; system: string }, code: string) => {
  const layout = shelf.layout(job.system);
  return jobVariant(job, layout, judgeOf(layout), seedFor(code, job.id));
};
const keysOf = (wires: readonly Wire[]) => wires.map(wireKey).sort();

/** Ways of strips in the order of their numbers. */
const waysOf = ({ system: { parts } }: Layout): string[] =>
  parts
    .filter(({ kind }) => kind.kind === 'strip')
    .flatMap(({ id, kind }) => kind.terminals.map((terminal) => `${id}/${terminal.id}`));

describe.each(jobs)('$id', (job) => {
  const layout = shelf.layout(job.system);
  const codes = ['AB', 'STUDENT-1', 'Z9'];
  const all = codes.map((code) => variant(job, code));

  test('is the same for the same code, and every wire is between terminals of the layout', () => {
    for (const [k, code] of codes.entries()) expect(variant(job, code)).toEqual(all[k]);
    for (const end of all.flatMap(({ given }) => given).flat())
      expect(layout.system.nodeOf.get(end)).toBeLessThan(layout.system.terminals);
  });

  test('differs from code to code', () => {
    const given = all.map((one) => keysOf(one.given).join('\n'));
    expect(new Set(given).size).toBeGreaterThan(1);
  });

  test('starts with something to do, and what is to be put right is wrong', () => {
    for (const { given } of all) expect(judgeOf(layout)(given).accepted).toBe(false);
  });

  test(job.kind === 'put-right' ? 'tells what it does, not where' : 'keeps what is locked', () => {
    for (const one of all) {
      expect(one.locked).toBe(job.kind === 'bare' || job.kind === 'complete');
      expect(one.says.every((sentence) => sentence.length > 20)).toBe(true);
      if (job.kind !== 'put-right') continue;
      expect(one.says.some((sentence) => sentence.startsWith('What it does: '))).toBe(true);
      for (const way of waysOf(layout)) expect(one.says.join(' ')).not.toContain(way);
    }
  });

  test('can be done: a right wiring in the new numbers has all that is locked', () => {
    if (!all[0]?.locked) return;
    for (const one of all) {
      // The numbers by where each wire of the given ones went.
      const done = layout.right.some(({ wires }) => {
        const moved = renumberedLike(job, one.given, wires, layout);
        return moved && lockedMissing(one, moved).length === 0 && judgeOf(layout)(moved).accepted;
      });
      expect(done).toBe(true);
    }
  });
});

/** A wiring with the numbers that a variant's given wires tell; ways that none of them uses fill up in order. */
function renumberedLike(job: JobGiven, given: readonly Wire[], wires: readonly Wire[], layout: Layout) {
  const ways = waysOf(layout);
  const plain = job.kind === 'bare' ? suppliesOf(layout, given, wires) : job.given;
  if (plain.length !== given.length) return undefined;
  const moved = new Map<string, string>();
  plain.forEach(([a, b], k) => {
    const [x, y] = given[k] as Wire;
    moved.set(a, x).set(b, y);
  });
  const free = ways.filter((way) => ![...moved.values()].includes(way));
  for (const way of ways) if (!moved.has(way)) moved.set(way, free.shift() as string);
  return wires.map(([a, b]): Wire => [moved.get(a) ?? a, moved.get(b) ?? b]);
}

/** The wires of a right wiring whose lead is that of each given one. */
const suppliesOf = (layout: Layout, given: readonly Wire[], wires: readonly Wire[]): Wire[] => {
  const ways = new Set(waysOf(layout));
  return given.flatMap(([a, b]): Wire[] => {
    const [lead, way] = ways.has(a) ? [b, a] : [a, b];
    const found = wires.find(([x, y]) => (x === lead && ways.has(y)) || (y === lead && ways.has(x)));
    if (!found) return [];
    const other = found[0] === lead ? found[1] : found[0];
    return [way === a ? [other, lead] : [lead, other]];
  });
};

test('a class of thirty has its own numbers: no two strips of twelve ways are alike', () => {
  const job = jobs.find(({ id }) => id === 'unvented-three-port-switching') as (typeof jobs)[number];
  const codes = Array.from({ length: 30 }, (_, k) => `L-${k}`);
  const given = codes.map((code) => keysOf(variant(job, code).given).join('\n'));
  expect(new Set(given).size).toBe(30);
});

test('a class of thirty has many wrong wires to put right', () => {
  const job = jobs.find(({ id }) => id === 'two-zones-wrong-floor') as (typeof jobs)[number];
  const { system, right } = shelf.layout(job.system);
  const kinds = new Set<string>();
  for (let k = 0; k < 30; k++) {
    const { given } = variant(job, `L-${k}`);
    expect(right.some(({ wires }) => isSameCircuit(system, given, wires))).toBe(false);
    kinds.add(
      judgeOf(shelf.layout(job.system))(given)
        .findings.map(({ id, says }) => `${id} ${says.replaceAll(/\d+/g, '')}`)
        .join(),
    );
  }
  expect(kinds.size).toBeGreaterThan(15);
});

test('where the class shares its variants, the code changes nothing', () => {
  const same = { ...coursework, variants: 'same' } as const;
  for (const kind of ['job', 'question', 'callout', 'fault'] as const)
    expect(variantSeed(same, 'AB', { id: 'x', kind }, 1)).toBe(variantSeed(same, 'CD', { id: 'x', kind }, 1));
});

test('a question and a fault are others at the next attempt, a job is not', () => {
  const at = (kind: 'job' | 'question' | 'fault', attempt: number) =>
    variantSeed(coursework, 'AB', { id: 'x', kind }, attempt);
  expect(at('job', 2)).toBe(at('job', 1));
  for (const kind of ['question', 'fault'] as const)
    expect(new Set([1, 2, 3, 4, 5].map((attempt) => at(kind, attempt))).size).toBe(5);
});

test('the share of given wires that is left is counted whichever way round they are written', () => {
  const given: Wire[] = [
    ['a/1', 'b/1'],
    ['a/2', 'b/2'],
  ];
  expect(shareKept({ given }, [['b/1', 'a/1']])).toBe(0.5);
  expect(shareKept({ given: [] }, [])).toBe(1);
  expect(lockedMissing({ given, locked: true, says: [] }, [['b/1', 'a/1']])).toEqual([['a/2', 'b/2']]);
  expect(lockedMissing({ given, locked: false, says: [] }, [])).toEqual([]);
});
