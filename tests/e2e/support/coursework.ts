import { text } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Coursework } from '../../../src/course/coursework/coursework.ts';
import { dealJob, dealQuestion } from '../../../src/course/coursework/deal.ts';
import { gradeWork, type Marked } from '../../../src/course/coursework/grade.ts';
import { type Slot, slotsOf } from '../../../src/course/coursework/slots.ts';
import type { Result } from '../../../src/course/coursework/work.ts';
import type { Item } from '../../../src/course/item.ts';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { type Wire, wireKey } from '../../../src/engine/model/wiring.ts';
import { writeCourseworkHash } from '../../../src/files/coursework-link.ts';
import { parseResult } from '../../../src/files/result.ts';
import { loadGrading } from '../../../src/files/site/grading.ts';
import { type Opening, openPage } from './browser.ts';
import { press, type Touching } from './item.ts';
import { jobOf, LAPTOP } from './job.ts';

const { source, objectivesOf } = loadGrading();

/** The learner of these tests. */
export const CODE = 'AB12';

/** One of each: a question of a lesson, fresh questions, a job with three wires missing, a callout, a fault of one's own. */
export const WEEK: Coursework = {
  id: 'try-out',
  title: 'Week three',
  says: 'Read the lesson first.',
  opens: '2026-11-02',
  due: '2026-12-18',
  variants: 'own',
  seed: 4711,
  pass: 3,
  tasks: [
    { id: 'lesson', kind: 'lesson', lesson: 'line-neutral-earth', attempts: 2, hints: 1 },
    {
      id: 'live',
      kind: 'questions',
      title: 'What is live?',
      about: { make: 'live-terminals', layouts: ['three-port'] },
      level: 1,
      count: 2,
      attempts: 2,
      hints: 0,
    },
    { id: 'wire', kind: 'job', job: 'frost-two-two-ports-add', attempts: 3, hints: 1 },
    { id: 'visit', kind: 'callout', callout: 'the-tank-that-never-stops', attempts: 2, hints: 0 },
    { id: 'find', kind: 'fault', system: 'unvented-three-port', level: 1, attempts: 1, hints: 1 },
  ],
};

export const slotOf = (id: string): Slot => {
  const slot = slotsOf(WEEK, objectivesOf).find((one) => one.id === id);
  if (!slot) throw new Error(`There is no slot ${id}.`);
  return slot;
};

/** The question that the page must deal. */
export function itemOf(id: string, attempt: number): Item {
  const slot = slotOf(id);
  if (slot.kind !== 'question') throw new Error(`${id} is no question.`);
  return dealQuestion(WEEK, slot, CODE, attempt, source);
}

/** The wires given in the learner's own job, and those that make it right. */
export function wiresOf(id: string): { readonly given: readonly Wire[]; readonly missing: readonly Wire[] } {
  const slot = slotOf(id);
  if (slot.kind !== 'job') throw new Error(`${id} is no job.`);
  const { layout, variant } = dealJob(WEEK, slot, CODE, source);
  const judge = makeJudge(layout.system);
  // The learner's own numbers, by the wires that the course and the learner are both given, in the same order.
  const own = new Map<string, string>();
  jobOf(slot.job).given.forEach((wire, k) => {
    for (const side of [0, 1] as const) own.set(wire[side], variant.given[k]?.[side] ?? wire[side]);
  });
  const given = new Set(variant.given.map(wireKey));
  for (const { wires } of layout.right) {
    const free = ways(layout.system.nodes, own);
    const name = (end: string) => {
      if (!end.startsWith('strip/')) return end;
      const known = own.get(end) ?? free.shift() ?? end;
      own.set(end, known);
      return known;
    };
    const all = wires.map(([a, b]): Wire => [name(a), name(b)]);
    const missing = all.filter((wire) => !given.has(wireKey(wire)));
    if (judge.judge([...variant.given, ...missing]).accepted) return { given: variant.given, missing };
  }
  throw new Error(`No right wiring of ${id} goes on from what is given.`);
}

const ways = (nodes: readonly string[], own: ReadonlyMap<string, string>): string[] => {
  const used = new Set(own.values());
  return nodes.filter((node) => node.startsWith('strip/') && !used.has(node));
};

/** Opens the coursework with the learner named in the link. */
export async function openWeek(opening: Partial<Opening> = {}, coursework = WEEK): Promise<Page> {
  const hash = writeCourseworkHash({ coursework, code: CODE });
  const page = await openPage({ ...LAPTOP, ...opening, path: `/coursework/${hash}` });
  await overview(page);
  return page;
}

export async function overview(page: Page): Promise<void> {
  await page.locator('.overview').waitFor({ timeout: 30_000 });
}

/** Goes from the tasks to one thing to do. */
export async function goTo(page: Page, id: string, touch: Touching): Promise<void> {
  await overview(page);
  await follow(page, `.overview a[data-slot="${id}"]`, touch);
  await page.locator(`.slot[data-slot="${id}"]`).waitFor();
  await page.locator('.question form, .wiring[data-ready]').first().waitFor({ timeout: 30_000 });
}

/** Follows a link: the key for it is Enter. */
export async function follow(page: Page, link: string, touch: Touching): Promise<void> {
  const found = page.locator(link);
  if (touch !== press) return touch(found);
  await found.focus();
  await found.press('Enter');
}

export const back = (page: Page, touch: Touching) => follow(page, '.slot .back a', touch);

/** Saves the result and reads the file as a mark book does. */
export async function handIn(page: Page, touch: Touching): Promise<Result> {
  const waiting = page.waitForEvent('download');
  await touch(page.getByRole('button', { name: /^Hand in/ }));
  const download = await waiting;
  expect(download.suggestedFilename()).toBe(`${WEEK.id}-${CODE}.json`);
  return parseResult(await text(await download.createReadStream()), download.suggestedFilename());
}

/** Every piece of work of a result graded again, as the mark book does. */
export const gradeAgain = ({ coursework, learner, work }: Result): readonly Marked[] =>
  work.map((one) => {
    const slot = slotsOf(coursework, objectivesOf).find(({ id }) => id === one.slot);
    if (!slot) throw new Error(`There is no slot ${one.slot}.`);
    return gradeWork(coursework, slot, one, learner, source);
  });
