import type { Locator, Page } from 'playwright-core';
import type { Answer, Form, Item } from '../../../src/course/item.ts';
import { makeItem, parseAddress } from '../../../src/course/items/index.ts';
import { lessonsOf } from '../../../src/course/outline.ts';
import { seedOf } from '../../../src/course/random.ts';
import { loadOutline, loadShelf } from '../../../src/files/site/course.ts';

const shelf = loadShelf();

/** The question that an address stands for, made here as the page makes it. */
export function itemAt(address: string): Item {
  const found = parseAddress(address);
  if (!found) throw new Error(`${address} is no address of a question.`);
  return makeItem(shelf, found.task, found.seed, found.level);
}

/** The address of a question of each kind of form, out of the course itself. */
export function addressWith(kind: Form['kind'], fits: (item: Item) => boolean = () => true): string {
  for (const { objectives } of lessonsOf(loadOutline()))
    for (const { id, tasks } of objectives)
      for (const task of tasks)
        for (let k = 0; k < 3; k++) {
          const item = makeItem(shelf, task, seedOf(`${id}/${k}`), 1);
          if (item.form.kind === kind && fits(item)) return item.id;
        }
  throw new Error(`The course has no question that is answered by ${kind}.`);
}

/** A wrong answer of the right kind. */
export function wrongAnswer({ form, answer, judge }: Item): Answer {
  const all: Answer[] =
    form.kind === 'choice'
      ? form.options.map(({ id }): Answer => ({ kind: 'choice', chosen: [id] }))
      : form.kind === 'mark'
        ? form.among.map(({ id }): Answer => ({ kind: 'mark', marked: [id] }))
        : form.kind === 'place'
          ? form.ways.map(({ id }): Answer => {
              return { kind: 'place', landed: Object.fromEntries(form.leads.map((lead) => [lead.id, id])) };
            })
          : form.kind === 'set'
            ? [{ kind: 'set', settings: form.start }]
            : form.kind === 'order'
              ? [{ kind: 'order', steps: form.steps.map(({ id }) => id) }]
              : [{ kind: 'number', typed: answer.kind === 'number' ? `9${answer.typed}` : '' }];
  const wrong = all.find((one) => !judge(one).right);
  if (!wrong) throw new Error('No wrong answer was found.');
  return wrong;
}

/** How a control is worked. */
export type Touching = (control: Locator) => Promise<void>;
export const click: Touching = (control) => control.click();
export const tap: Touching = (control) => control.tap();
/** Focus and the key that works it: no pointer at all. */
export const press: Touching = async (control) => {
  await control.focus();
  await control.press((await control.getAttribute('type')) === 'submit' ? 'Enter' : 'Space');
};

/** Gives an answer to the question in a piece of the page, by clicks, taps or keys alone. */
export async function giveAnswer(
  within: Locator,
  form: Form,
  answer: Answer,
  touch: Touching,
): Promise<void> {
  if (answer.kind === 'choice')
    for (const id of answer.chosen) await touch(within.locator(`input[value="${id}"]`));
  if (answer.kind === 'mark')
    for (const id of answer.marked) await touch(within.locator(`[data-mark="${id}"]`));
  if (answer.kind === 'place')
    for (const [lead, way] of Object.entries(answer.landed)) {
      const held = within.locator(`[data-lead="${lead}"]`);
      if ((await held.getAttribute('aria-pressed')) !== 'true') await touch(held);
      await touch(within.locator(`[data-way="${way}"] .to`));
    }
  if (answer.kind === 'set' && form.kind === 'set')
    for (const { id, settings } of form.controls) {
      const control = within.locator(`[data-set="${id}"]`);
      const on = (await control.getAttribute('aria-checked')) === 'true';
      if (on !== (answer.settings[id] === settings[1])) await touch(control);
    }
  if (answer.kind === 'order')
    for (const [to, id] of answer.steps.entries())
      for (;;) {
        const now = await stepsOf(within);
        if (now.indexOf(id) <= to) break;
        await touch(within.locator(`[data-step="${id}"] .up`));
      }
  if (answer.kind === 'number') await within.getByRole('textbox').fill(answer.typed);
}

/** The steps in the order in which they stand. */
export const stepsOf = (within: Locator): Promise<(string | null)[]> =>
  within.locator('[data-step]').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-step')));

export const checkButton = (within: Locator): Locator =>
  within.getByRole('button', { name: /^(Check|Give this answer)$/ });
/** What is said after an answer. */
export const resultOf = (within: Locator): Locator => within.locator('[data-right]');

/** Waits until the practice page or a test has fetched its question. */
export const question = async (page: Page): Promise<Locator> => {
  await page.locator('[data-ready="true"]').waitFor();
  return page.getByRole('region', { name: 'Question', exact: true });
};
export const addressShown = async (page: Page): Promise<string> =>
  (await (await question(page)).getAttribute('data-item')) ?? '';
