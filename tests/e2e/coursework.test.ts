import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Wire } from '../../src/engine/model/wiring.ts';
import { writeCoursework } from '../../src/files/coursework.ts';
import { writeCourseworkHash } from '../../src/files/coursework-link.ts';
import { writeResult } from '../../src/files/result.ts';
import { loadCourseworks } from '../../src/files/site/coursework.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import {
  back,
  CODE,
  goTo,
  gradeAgain,
  handIn,
  itemOf,
  openWeek,
  overview,
  WEEK,
  wiresOf,
} from './support/coursework.ts';
import {
  checkButton,
  click,
  giveAnswer,
  press,
  resultOf,
  type Touching,
  tap,
  wrongAnswer,
} from './support/item.ts';
import { jobOf, LAPTOP, PHONE, terminal } from './support/job.ts';
import { keyWire } from './support/keys.ts';
import { judgeButton, verdict } from './support/verdict.ts';

const question = (page: Page) => page.locator('.question');
const goes = (page: Page) => page.locator('.goes').getAttribute('data-left');
const tile = (page: Page, id: string) =>
  page.locator(`.overview a[data-slot="${id}"]`).getAttribute('aria-label');

async function answer(page: Page, id: string, attempt: number, right: boolean, touch: Touching) {
  const item = itemOf(id, attempt);
  await page.locator(`[data-attempt="${attempt}"][data-item="${item.id}"]`).waitFor();
  await giveAnswer(question(page), item.form, right ? item.answer : wrongAnswer(item), touch);
  await touch(checkButton(question(page)));
  await expect.poll(() => resultOf(question(page)).getAttribute('data-right')).toBe(String(right));
}

/** Joins two ends in the strip view, each lead out of the tray of its part. */
async function tapWire(page: Page, wire: Wire) {
  const { parts } = jobOf('frost-two-two-ports-add').spec;
  for (const end of wire) {
    const short = parts[end.slice(0, end.indexOf('/'))]?.short;
    const group = page.getByRole('group', { name: 'Parts' });
    const part = group.getByRole('button', { name: new RegExp(`^${short}( |$)`) });
    if (!end.startsWith('strip/') && (await part.getAttribute('aria-pressed')) !== 'true') await part.tap();
    await terminal(page, end).tap();
  }
}

/** Chooses a file as people do: the press on the field is what wakes the page. */
async function choose(page: Page, name: string, text: string) {
  const chooser = page.waitForEvent('filechooser');
  await page.getByLabel('Coursework file').click();
  await (await chooser).setFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
}

/** The cylinder thermostat that is welded on its call, found and proved as a good engineer would. */
async function soundVisit(page: Page) {
  await page.locator('[data-look="works boiler"]').click();
  await page.locator('[data-input="cylinder"]').click();
  await page.locator('[data-look="works boiler"]').click();
  await page.locator('[data-input="cylinder"]').click();
  for (const id of ['identify spur', 'isolate', 'lock', 'prove', 'L-N', 'L-E', 'N-E', 'prove again'])
    await page.locator(`[data-step="${id}"]`).click();
  await page.getByRole('button', { name: 'Take the cover off: Cylinder thermostat' }).click();
  await page.getByRole('button', { name: 'Multimeter: continuity' }).click();
  for (const end of ['CALL', 'SAT']) {
    await page.locator('button[data-terminal="cyl-stat/COM"]').click();
    await page.locator(`button[data-terminal="cyl-stat/${end}"]`).click();
    await page.getByRole('button', { name: 'Probes off' }).click();
  }
  await page.getByRole('radio', { name: 'A part has failed' }).click();
  await page.getByLabel('Which part?').selectOption({ label: 'Cylinder thermostat' });
  await page.getByRole('radio', { name: 'Is welded on its call' }).click();
  await page.getByRole('button', { name: 'That is what is wrong' }).click();
}

/** A question wrong and then right, a job wrong and then right, a reload in between, and the file at the end. */
async function wholeWay(page: Page, touch: Touching, land: (page: Page, wire: Wire) => Promise<void>) {
  await goTo(page, 'live/1', touch);
  expect(await goes(page)).toBe('2');
  await answer(page, 'live/1', 1, false, touch);
  await expect.poll(() => goes(page)).toBe('1');
  await touch(page.getByRole('button', { name: /^Another go/ }));
  await answer(page, 'live/1', 2, true, touch);
  expect(await page.locator('.slot').getAttribute('data-state')).toBe('right');
  await back(page, touch);
  await overview(page);
  expect(await tile(page, 'live/1')).toBe('Question 1: right');

  const { missing } = wiresOf('wire/1');
  const [first, ...rest] = missing;
  if (!first) throw new Error('Nothing is missing.');
  await goTo(page, 'wire/1', touch);
  await land(page, first);
  // What was landed is there after a reload, and so is the place in the coursework.
  await page.reload();
  await page.locator('.wiring[data-ready]').waitFor();
  expect(page.url()).toContain('slot=wire/1');
  await touch(judgeButton(page));
  await expect.poll(() => verdict(page).textContent()).toBe('Not yet');
  await expect.poll(() => goes(page)).toBe('2');
  // Nothing changed: judging again costs nothing.
  await touch(judgeButton(page));
  await expect.poll(() => page.locator('.terms').textContent()).toContain('cost no go');
  expect(await goes(page)).toBe('2');
  expect(await page.getByRole('button', { name: /Compare with/ }).count()).toBe(0);
  for (const wire of rest) await land(page, wire);
  await touch(judgeButton(page));
  await expect.poll(() => verdict(page).textContent()).toBe('Accepted');
  await page.getByRole('button', { name: /Compare with/ }).waitFor();
  await back(page, touch);
  await overview(page);

  const result = await handIn(page, touch);
  expect(result.learner.code).toBe(CODE);
  expect(result.coursework).toEqual(WEEK);
  expect(result.work.map(({ slot, attempt, right }) => [slot, attempt, right])).toEqual([
    ['live/1', 1, false],
    ['live/1', 2, true],
    ['wire/1', 1, false],
    ['wire/1', 2, true],
  ]);
  const marks = gradeAgain(result);
  expect(marks.map(({ right }) => right)).toEqual(result.work.map(({ right }) => right));
  expect(marks.every(({ made }) => made === 'as dealt')).toBe(true);
}

describe('Coursework', () => {
  test('With a finger on a phone: wrong and right, a reload in the middle, and a file that grades the same', async () => {
    const page = await openWeek(PHONE);
    await wholeWay(page, tap, tapWire);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
  });

  test('With keys alone: the same way', async () => {
    const page = await openWeek();
    await wholeWay(page, press, keyWire);
  });

  test('Whoever opens a link without a code is asked for it, told what cannot be one, and found again on the device', async () => {
    const hash = writeCourseworkHash({ coursework: WEEK });
    const page = await openPage({ ...PHONE, path: `/coursework/${hash}` });
    await page.getByRole('heading', { name: 'Who are you?' }).waitFor();
    await seeNoViolation(page, 'who');
    await page.getByLabel('Your code').fill('!');
    await page.getByRole('button', { name: 'Start' }).tap();
    await expect.poll(() => page.locator('#cw-code-says').textContent()).toContain('“!” cannot be a code');
    await page.getByLabel('Your code').fill('ab 12');
    await page.getByRole('button', { name: 'Start' }).tap();
    await overview(page);
    expect(await page.locator('.overview').getAttribute('data-sitting')).toBe(`${WEEK.id} ${CODE}`);
    await seeNoViolation(page, 'tasks');
    await page.goto('/coursework/');
    await page.locator('.sittings a').first().tap();
    await overview(page);
    await page.goBack();
    await page.getByRole('heading', { name: 'Coursework', exact: true }).waitFor();
    await seeNoViolation(page, 'start');
  });

  test.each([
    ['a damaged link', '#c=AX2SAAAA', 'damaged'],
    ['a sample that is not there', '#sample=no-such', 'could not be fetched'],
    ['a sitting that is not there', '#sitting=gone+AB12', 'no coursework “gone AB12” on this device'],
    [
      'a job that the course does not have',
      writeCourseworkHash({
        coursework: {
          ...WEEK,
          pass: 1,
          tasks: [{ id: 'a', kind: 'job', job: 'no-such', attempts: 1, hints: 0 }],
        },
        code: CODE,
      }),
      'There is no job “no-such” in this course.',
    ],
  ])('With %s the page says what is wrong', async (_, hash, says) => {
    const page = await openPage({ ...LAPTOP, path: `/coursework/${hash}`, expected: /404/ });
    await expect.poll(() => page.getByRole('alert').first().textContent()).toContain(says);
  });

  test.each(loadCourseworks())('The sample “$title” opens with any code', async ({ id, tasks }) => {
    const page = await openPage({ ...PHONE, path: '/coursework/' });
    await page.locator(`a[href="#sample=${id}"]`).tap();
    await page.getByLabel('Your code').fill('TRY-1');
    await page.getByRole('button', { name: 'Start' }).tap();
    await overview(page);
    expect(await page.locator('[data-task]').count()).toBe(tasks.length);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
  });

  test('A link to a piece of the page leaves the place in the coursework as it is', async () => {
    const page = await openWeek(PHONE);
    await goTo(page, 'wire/1', tap);
    await page.getByRole('link', { name: 'Read the job' }).tap();
    await expect.poll(() => page.url()).toContain('slot=wire/1');
    expect(await page.locator('.slot').getAttribute('data-slot')).toBe('wire/1');
  });

  test('Two tabs at once lose nothing, and the same question counts only once', async () => {
    const first = await openWeek();
    await goTo(first, 'live/1', click);
    const second = await first.context().newPage();
    await second.goto(first.url());
    await second.locator('.question form').waitFor();
    await answer(first, 'live/1', 1, true, click);
    await second.getByText('answered in another tab').waitFor();
    await back(second, click);
    await goTo(second, 'live/2', click);
    await answer(second, 'live/2', 1, true, click);
    await back(first, click);
    await overview(first);
    await expect.poll(() => tile(first, 'live/2')).toBe('Question 2: right');
    const { work } = await handIn(first, click);
    expect(work.map(({ slot, attempt }) => `${slot} ${attempt}`)).toEqual(['live/1 1', 'live/2 1']);
  });

  test('A question whose goes are used up stays shown with what was said of it', async () => {
    const page = await openWeek();
    await goTo(page, 'live/2', click);
    await answer(page, 'live/2', 1, false, click);
    await page.getByRole('button', { name: /^Another go/ }).click();
    await answer(page, 'live/2', 2, false, click);
    expect(await page.getByRole('button', { name: /^Another go/ }).count()).toBe(0);
    await page.reload();
    await expect.poll(() => resultOf(question(page)).getAttribute('data-right')).toBe('false');
    expect(await question(page).locator('.told').count()).toBeGreaterThan(0);
    await back(page, click);
    await overview(page);
    expect(await tile(page, 'live/2')).toBe('Question 2: not right, no goes left');
  });

  test('A visit: no help where none is allowed, wrong and then right, and what it was is told only at the end', async () => {
    const page = await openWeek();
    await goTo(page, 'visit/1', click);
    expect(await page.locator('.wheels input:not([disabled])').count()).toBe(0);
    await page.locator('[data-look="works boiler"]').click();
    await page.reload();
    await page.locator('.visit[data-ready]').waitFor();
    expect(await page.getByRole('region', { name: 'Notebook' }).getByRole('listitem').count()).toBe(1);
    await page.getByRole('radio', { name: 'Nothing is wrong' }).click();
    await page.getByRole('button', { name: 'That is what is wrong' }).click();
    await page.locator('[data-result="ready"]').waitFor({ timeout: 30_000 });
    const told = 'The cylinder thermostat is welded on its call';
    expect(await page.locator('.result').first().textContent()).not.toContain(told);
    await page.getByRole('button', { name: 'Another go, from the door' }).click();
    await page.locator('.visit[data-ready]:not(.done)').waitFor();
    await soundVisit(page);
    await page.locator('[data-result="ready"]').waitFor({ timeout: 30_000 });
    expect(await page.locator('.result').first().textContent()).toContain(told);
    await seeNoViolation(page, 'a visit that is over');
    await back(page, click);
    await overview(page);
    const result = await handIn(page, click);
    expect(result.work.map(({ right }) => right)).toEqual([false, true]);
    expect(gradeAgain(result).map(({ right, made }) => [right, made])).toEqual([
      [false, 'as dealt'],
      [true, 'as dealt'],
    ]);
  });

  test('A fault of one’s own: the one that the code deals', async () => {
    const page = await openWeek();
    await goTo(page, 'find/1', click);
    await page.getByRole('checkbox', { name: 'How many are left' }).check();
    // One help is allowed: with that one on, the others stay off.
    expect(await page.locator('.wheels input:not([disabled])').count()).toBe(1);
    await page.getByRole('radio', { name: 'Nothing is wrong' }).click();
    await page.getByRole('button', { name: 'That is what is wrong' }).click();
    await page.locator('[data-result="ready"]').waitFor({ timeout: 30_000 });
    await page.getByRole('heading', { name: 'The shortest sound route' }).waitFor();
    await back(page, click);
    await overview(page);
    const result = await handIn(page, click);
    expect(result.work.map(({ hints }) => hints)).toEqual([1]);
    expect(gradeAgain(result).map(({ right, made }) => [right, made])).toEqual([[false, 'as dealt']]);
  });

  test('A coursework file opens by choosing it, and a result goes on where it stopped on another device', async () => {
    const page = await openWeek();
    await goTo(page, 'lesson/1', click);
    await answer(page, 'lesson/1', 1, true, click);
    await back(page, click);
    const handed = await handIn(page, click);

    const other = await openPage({ ...LAPTOP, path: '/coursework/' });
    await choose(other, 'result.json', writeResult(handed, handed.made));
    await overview(other);
    expect(await tile(other, 'lesson/1')).toBe('Question 1: right');
    await other.goto('/coursework/');
    await choose(other, 'week.yaml', writeCoursework({ ...WEEK, id: 'by-file' }));
    await other.getByRole('heading', { name: 'Who are you?' }).waitFor();
    await other.goto('/coursework/');
    await choose(other, 'broken.yaml', 'id: broken\n');
    await expect.poll(() => other.getByRole('alert').first().textContent()).toContain('broken.yaml');
  });

  test('axe finds nothing at a question that was answered wrong, and at a job', async () => {
    const page = await openWeek({ ...PHONE, theme: 'dark' });
    await goTo(page, 'live/1', tap);
    await answer(page, 'live/1', 1, false, tap);
    await seeNoViolation(page, 'question');
    await back(page, tap);
    await goTo(page, 'wire/1', tap);
    await seeNoViolation(page, 'job');
  });
});
