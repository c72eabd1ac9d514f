import { expect, test } from 'vitest';
import { makeItem } from '../../src/course/items/index.ts';
import { lessonsOf } from '../../src/course/outline.ts';
import { seedOf } from '../../src/course/random.ts';
import { loadOutline, loadShelf } from '../../src/files/site/course.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import {
  addressWith,
  checkButton,
  click,
  giveAnswer,
  itemAt,
  press,
  question,
  resultOf,
  stepsOf,
  type Touching,
  tap,
  wrongAnswer,
} from './support/item.ts';
import { PHONE } from './support/job.ts';
import { sidewaysScroll, smallTargets } from './support/measure.ts';

const kinds = ['choice', 'mark', 'place', 'set', 'order', 'number'] as const;
const ways: readonly [string, Touching, object][] = [
  ['a mouse', click, {}],
  ['a finger', tap, PHONE],
  ['the keyboard', press, {}],
];

for (const [name, touch, how] of ways)
  test.each(kinds)(
    `A %s question is answered wrongly, explained and put right with ${name}`,
    async (kind) => {
      const address = addressWith(kind);
      const item = itemAt(address);
      const page = await openPage({ ...how, path: `/practice/#item=${address}` });
      const sheet = await question(page);
      const wrong = wrongAnswer(item);
      await giveAnswer(sheet, item.form, wrong, touch);
      await touch(checkButton(sheet));
      await expect.poll(() => resultOf(sheet).getAttribute('data-right')).toBe('false');
      // Cause, consequence and where to look, from the judge's own words.
      const [note] = item.judge(wrong).notes;
      const told = (await sheet.textContent())?.replace(/\s+/g, ' ') ?? '';
      for (const says of [note?.cause, note?.consequence, note?.look])
        expect(told).toContain(says?.replace(/\s+/g, ' ').trim());

      if (kind === 'choice' || kind === 'mark') {
        // What was marked stays until it is marked off.
        for (const id of wrong.kind === 'choice' && item.form.kind === 'choice' && item.form.many
          ? wrong.chosen
          : [])
          await touch(sheet.locator(`input[value="${id}"]`));
        for (const id of wrong.kind === 'mark' && item.form.kind === 'mark' && !item.form.one
          ? wrong.marked
          : [])
          await touch(sheet.locator(`[data-mark="${id}"]`));
      }
      if (wrong.kind === 'place')
        for (const id of Object.keys(wrong.landed)) await touch(sheet.locator(`[data-lead="${id}"]`));
      await giveAnswer(sheet, item.form, item.answer, touch);
      await touch(checkButton(sheet));
      await expect.poll(() => resultOf(sheet).getAttribute('data-right')).toBe('true');
    },
  );

test('Terminals can be marked on the drawing of the strip as well', async () => {
  const address = addressWith('mark', ({ form, answer }) => {
    const ids = answer.kind === 'mark' ? answer.marked : [];
    return form.kind === 'mark' && ids.every((id) => id.startsWith('strip/'));
  });
  const item = itemAt(address);
  const page = await openPage({ path: `/practice/#item=${address}` });
  const sheet = await question(page);
  if (item.answer.kind !== 'mark') throw new Error('expected marks');
  for (const id of item.answer.marked)
    await sheet
      .getByRole('button', { name: `Terminal ${id.replace('strip/', '')} on the strip`, exact: true })
      .click();
  await checkButton(sheet).click();
  await expect.poll(() => resultOf(sheet).getAttribute('data-right')).toBe('true');
});

test('A lead is dragged to its terminal with the mouse', async () => {
  const address = addressWith('place');
  const item = itemAt(address);
  const page = await openPage({ path: `/practice/#item=${address}`, height: 1400 });
  const sheet = await question(page);
  if (item.answer.kind !== 'place') throw new Error('expected landings');
  for (const [lead, way] of Object.entries(item.answer.landed)) {
    const from = await sheet.locator(`[data-lead="${lead}"]`).boundingBox();
    const to = await sheet.locator(`[data-way="${way}"]`).boundingBox();
    if (!from || !to) throw new Error('A lead or a terminal is not on the page.');
    await page.mouse.move(from.x + 20, from.y + 20);
    await page.mouse.down();
    await page.mouse.move(to.x + 40, to.y + to.height / 2, { steps: 5 });
    await page.mouse.up();
  }
  await checkButton(sheet).click();
  await expect.poll(() => resultOf(sheet).getAttribute('data-right')).toBe('true');
});

test('A step is moved with the arrow keys on its handle', async () => {
  const page = await openPage({ path: `/practice/#item=${addressWith('order')}` });
  const sheet = await question(page);
  const [first, second, ...rest] = await stepsOf(sheet);
  await sheet.locator(`[data-step="${first}"] .grip`).press('ArrowDown');
  await expect.poll(() => stepsOf(sheet)).toEqual([second, first, ...rest]);
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => stepsOf(sheet)).toEqual([first, second, ...rest]);
});

test('Hints open one by one, from where to look to one step', async () => {
  const address = addressWith('mark');
  const { hints } = itemAt(address);
  const page = await openPage({ path: `/practice/#item=${address}` });
  const sheet = await question(page);
  for (let open = 0; open < hints.length; open++) {
    expect(await sheet.getByRole('list', { name: 'Hints' }).getByRole('listitem').count()).toBe(open);
    await sheet.getByRole('button', { name: /hint/ }).click();
  }
  expect(await sheet.getByRole('button', { name: /hint/ }).count()).toBe(0);
  expect(await sheet.getByRole('list', { name: 'Hints' }).textContent()).toContain(hints[2]);
});

test('The state that shows a mistake is drawn when asked for', async () => {
  const address = addressWith('mark', (one) => one.judge(wrongAnswer(one)).notes[0]?.scene !== undefined);
  const item = itemAt(address);
  const page = await openPage({ path: `/practice/#item=${address}` });
  const sheet = await question(page);
  await giveAnswer(sheet, item.form, wrongAnswer(item), click);
  await checkButton(sheet).click();
  await sheet.getByRole('button', { name: 'Show me' }).first().click();
  const scene = sheet.getByRole('region', { name: 'The state that shows it' });
  expect(await scene.getByText('live', { exact: true }).count()).toBeGreaterThan(0);
});

const shelf = loadShelf();
/** A lesson's first objective whose first question is one to mark. */
const [lesson] = lessonsOf(loadOutline()).flatMap(({ slug, objectives }) =>
  objectives.flatMap(({ id, tasks }) => {
    const item = tasks[0] && makeItem(shelf, tasks[0], seedOf(id), 1);
    return item?.form.kind === 'mark' ? [{ slug, id, item }] : [];
  }),
);
if (!lesson) throw new Error('No lesson opens its check with terminals to mark.');

test('A check in a lesson wakes at the first press, which counts, and a begun answer survives a reload', async () => {
  const { slug, id, item } = lesson;
  const page = await openPage({ path: `/lessons/${slug}/` });
  const check = page.locator(`[data-objective="${id}"]`);
  if (item.answer.kind !== 'mark') throw new Error('expected marks');
  const [mark] = item.answer.marked;
  const button = check.locator(`[data-mark="${mark}"]`);
  await button.click();
  await expect.poll(() => button.getAttribute('aria-pressed')).toBe('true');
  await page.waitForTimeout(300);
  await page.reload();
  // The draft comes back when the check is touched again.
  await check.getByRole('button', { name: /hint/ }).focus();
  await expect.poll(() => button.getAttribute('aria-pressed')).toBe('true');
});

test('A check says how the objective stands, and asks a fresh question after a right answer', async () => {
  const { slug, id, item } = lesson;
  const page = await openPage({ path: `/lessons/${slug}/` });
  const check = page.locator(`[data-objective="${id}"]`);
  await giveAnswer(check, item.form, item.answer, click);
  await checkButton(check).click();
  await expect.poll(() => resultOf(check).getAttribute('data-right')).toBe('true');
  expect(await check.textContent()).toContain('On the way');
  const before = await check.getByRole('link', { name: 'Link to this question' }).getAttribute('href');
  await check.getByRole('button', { name: 'Another question' }).click();
  const link = check.getByRole('link', { name: 'Link to this question' });
  await expect.poll(() => link.getAttribute('href')).not.toBe(before);
  expect(await resultOf(check).count()).toBe(0);
});

test('Without scripts a check can be read, with its answer folded away', async () => {
  const { slug, id, item } = lesson;
  const page = await openPage({ path: `/lessons/${slug}/`, scripts: false });
  const check = page.locator(`[data-objective="${id}"]`);
  const says = (await check.textContent())?.replace(/\s+/g, ' ') ?? '';
  expect(says).toContain(item.steps.at(-1));
  expect(await check.locator('details').getAttribute('open')).toBe(null);
});

test.each(kinds)('A %s question has no barrier, wide or narrow, asked and answered wrongly', async (kind) => {
  const address = addressWith(kind);
  const item = itemAt(address);
  const page = await openPage({ ...PHONE, path: `/practice/#item=${address}` });
  const sheet = await question(page);
  await seeNoViolation(page, `${kind}, asked`);
  await giveAnswer(sheet, item.form, wrongAnswer(item), tap);
  await checkButton(sheet).tap();
  await resultOf(sheet).waitFor();
  await seeNoViolation(page, `${kind}, answered`);
  for (const width of [360, 768, 1366]) {
    await page.setViewportSize({ width, height: 800 });
    expect(await sidewaysScroll(page)).toBe(0);
    expect(await smallTargets(page)).toEqual([]);
  }
});
