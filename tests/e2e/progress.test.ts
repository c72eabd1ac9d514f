import { text as readText } from 'node:stream/consumers';
import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { objectivesOf } from '../../src/course/outline.ts';
import type { Trial } from '../../src/course/trial.ts';
import { loadOutline } from '../../src/files/site/course.ts';
import { seeNoViolation } from './support/axe.ts';
import { type Opening, openPage } from './support/browser.ts';
import { LAPTOP, PHONE } from './support/job.ts';

const DAY = 86_400_000;
const objectives = objectivesOf(loadOutline());

/** Answers that a learner has given, the latest an hour ago: the first objective solid, the second shaky, the third solid and due. */
function someLog(): Trial[] {
  const now = Date.now();
  const answer = (which: number, ago: number, right: boolean, seed: number): Trial => ({
    at: now - ago,
    objective: objectives[which]?.id ?? '',
    item: `path-order/three-port/${seed}/1`,
    method: 'path-order',
    right,
    attempt: 1,
    hints: 0,
    shown: 0,
    took: 20_000,
    mode: 'lesson',
  });
  const hour = DAY / 24;
  return [
    ...[3, 2, 1].map((k) => answer(0, hour * k, true, k)),
    answer(1, hour, false, 11),
    ...[3, 2, 1].map((k) => answer(2, 200 * DAY + k, true, 20 + k)),
  ];
}

/** A log long enough for every figure: 24 objectives, each asked three times and again after a week and a fortnight. */
const longLog = (): Trial[] =>
  objectives.slice(0, 24).flatMap(({ id }, k) =>
    [30, 29.99, 29.98, 20, 9].map((ago, n) => ({
      at: Date.now() - ago * DAY,
      objective: id,
      item: `path-order/three-port/${k * 10 + n}/1`,
      method: 'path-order',
      right: (k + n) % 6 !== 0,
      attempt: 1,
      hints: n === 0 ? 1 : 0,
      shown: 0,
      took: 20_000,
      mode: 'lesson' as const,
    })),
  );

/** Puts answers on the device as an earlier visit would have left them. */
async function leave(page: Page, trials: readonly Trial[]): Promise<void> {
  await page.evaluate(
    (log) =>
      new Promise<void>((done, fail) => {
        const asked = indexedDB.open('switched-live');
        asked.onerror = fail;
        asked.onsuccess = () => {
          const change = asked.result.transaction('trials', 'readwrite');
          for (const trial of log) change.objectStore('trials').put(trial);
          change.oncomplete = () => {
            asked.result.close();
            done();
          };
          change.onabort = fail;
        };
      }),
    trials,
  );
  await page.reload();
  await ready(page);
}

const ready = (page: Page) => page.locator('[data-ready]').waitFor();

async function openProgress(opening: Partial<Opening> = {}, trials: readonly Trial[] = []): Promise<Page> {
  const page = await openPage({ ...LAPTOP, ...opening, path: '/progress/' });
  await ready(page);
  if (trials.length > 0) await leave(page, trials);
  return page;
}

const figures = async (page: Page) =>
  (await page.getByRole('region', { name: 'At a glance' }).locator('.count').allTextContents()).map(Number);

test('A learner sees at a glance what is solid, shaky, not tried and due, in shapes and in words', async () => {
  const page = await openProgress({}, someLog());
  const all = objectives.length;
  // The one that was solid 200 days ago still is, and is due.
  expect(await figures(page)).toEqual([2, 1, all - 3, 1]);
  const marks = page.getByRole('region', { name: 'What you can do' }).locator('.strip').getByRole('link');
  const names = await marks.evaluateAll((links) =>
    links.slice(0, 4).map((link) => link.getAttribute('aria-label')),
  );
  const says = ['solid', 'shaky', 'solid, due', 'not tried'].map(
    (state, k) => `${objectives[k]?.says}: ${state}`,
  );
  expect(names).toEqual(says);
  expect(await marks.count()).toBe(all);
  await page.getByText('All of it in words').click();
  const row = page.getByRole('row').filter({ hasText: objectives[2]?.says ?? '' });
  expect(await row.textContent()).toMatch(/solid, due.*now/s);
});

test('With the keyboard each mark tells about itself and leads to its lesson', async () => {
  const page = await openProgress({}, someLog());
  const mark = page.getByRole('link', { name: `${objectives[1]?.says}: shaky` });
  await mark.focus();
  expect(await page.locator('.reading').textContent()).toContain('0 of 1 right without help');
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/lessons\/[a-z-]+\/$/);
});

test('The day of the assessment is kept, and the forecast reaches up to it', async () => {
  const page = await openProgress({}, longLog());
  const ahead = page.getByRole('region', { name: 'What lies ahead' });
  expect(await ahead.textContent()).toContain('in the next 28 days');
  const day = new Date(Date.now() + 90 * DAY).toISOString().slice(0, 10);
  await ahead.getByLabel('Day of your assessment').fill(day);
  await expect
    .poll(() => ahead.textContent())
    .toMatch(/On the day, if you revise.*in the next (89|90) days/s);
  await page.reload();
  await ready(page);
  expect(await ahead.getByLabel('Day of your assessment').inputValue()).toBe(day);
  await ahead.getByRole('button', { name: 'No date' }).click();
  await expect.poll(() => ahead.textContent()).toContain('in the next 28 days');
});

test('A backup taken on one device brings everything to another, wirings too, by choosing or dropping the file', async () => {
  const page = await openProgress({}, someLog());
  const key = 'switched-live/wiring/1/three-port';
  await page.evaluate((place) => localStorage.setItem(place, '{"job":"three-port","wires":[]}'), key);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a backup file' }).click();
  const text = await readText(await (await download).createReadStream());

  const other = await openProgress();
  expect((await figures(other))[0]).toBe(0);
  await other
    .getByLabel('Load a backup file')
    .setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  const safe = other.getByRole('region', { name: 'Keep it safe' });
  await expect.poll(() => safe.textContent()).toContain('Added 7 answers and 1 wiring or bench.');
  await expect.poll(() => figures(other)).toEqual(await figures(page));
  expect(await other.evaluate((place) => localStorage.getItem(place), key)).toContain('three-port');

  await other.locator('.drop').evaluate((drop, contents) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([contents], 'again.json'));
    drop.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, text);
  await expect.poll(() => safe.textContent()).toContain('All of its answers were here already.');
});

test('A file that is no backup is refused in words, and nothing changes', async () => {
  const page = await openProgress({}, someLog());
  const before = await figures(page);
  await page.getByLabel('Load a backup file').setInputFiles({
    name: 'notes.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"backup": 1}'),
  });
  const safe = page.getByRole('region', { name: 'Keep it safe' });
  await expect.poll(() => safe.textContent()).toMatch(/Nothing has been changed\. notes\.json: .*expected/);
  expect(await figures(page)).toEqual(before);
});

test('Start again offers a backup first, can be left, and then forgets all', async () => {
  const page = await openProgress({}, someLog());
  const before = await figures(page);
  const dialog = page.getByRole('dialog', { name: 'Forget your progress?' });
  await page.getByRole('button', { name: 'Start again…' }).click();
  const download = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save a backup file' }).click();
  expect((await download).suggestedFilename()).toMatch(/^switched-live-\d{4}-\d{2}-\d{2}\.json$/);
  await page.keyboard.press('Escape');
  expect(await figures(page)).toEqual(before);
  await page.getByRole('button', { name: 'Start again…' }).click();
  await dialog.getByRole('button', { name: 'Forget everything' }).click();
  await expect.poll(() => figures(page)).toEqual([0, 0, objectives.length, 0]);
  await page.reload();
  await ready(page);
  expect(await figures(page)).toEqual([0, 0, objectives.length, 0]);
});

test('Where the browser bars its storage the page says so, and still works', async () => {
  const page = await openProgress({
    prepare: (context: BrowserContext) =>
      context.addInitScript(() => {
        Object.defineProperty(window, 'indexedDB', { get: () => undefined });
      }),
  });
  expect(await page.getByText('does not let the site keep your progress').isVisible()).toBe(true);
  expect(await figures(page)).toEqual([0, 0, objectives.length, 0]);
});

test('What is answered in another tab shows up here by itself', async () => {
  const page = await openProgress();
  const [trial] = someLog();
  await page.evaluate(
    (one) =>
      new Promise<void>((done) => {
        const asked = indexedDB.open('switched-live');
        asked.onsuccess = () => {
          const change = asked.result.transaction('trials', 'readwrite');
          change.objectStore('trials').put(one);
          change.oncomplete = () => {
            asked.result.close();
            new BroadcastChannel('switched-live').postMessage('changed');
            done();
          };
        };
      }),
    trial,
  );
  await expect.poll(() => figures(page)).toEqual([0, 1, objectives.length - 1, 0]);
});

describe.each([
  ['a laptop', LAPTOP],
  ['a tablet', { width: 768, height: 1024, touch: true }],
  ['a phone', PHONE],
] as const)('on %s', (_, size) => {
  test('axe finds nothing, new or with a long log, and nothing reaches past the edge', async () => {
    const page = await openProgress({ ...size, reducedMotion: true });
    await seeNoViolation(page, 'new');
    await leave(page, longLog());
    await page.getByText('All of it in words').click();
    await seeNoViolation(page, 'with a long log');
    await page.getByRole('button', { name: 'Start again…' }).click();
    await seeNoViolation(page, 'start again');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
  }, 180_000);
});

test('Figures that claim something wait until there is enough to claim it from', async () => {
  const page = await openProgress({}, someLog());
  expect(await page.getByRole('region', { name: 'Is the estimate right' }).textContent()).toContain(
    'It takes 20 answers',
  );
  expect(await page.getByRole('region', { name: 'What it has done' }).textContent()).toContain(
    'It takes 10 things',
  );
  await leave(page, longLog());
  expect(await page.getByRole('region', { name: 'Is the estimate right' }).textContent()).toMatch(
    /the estimate said\s+\d+\s% would be right/,
  );
  expect(await page.getByRole('region', { name: 'What it has done' }).textContent()).toMatch(
    /After 7 days or more\s*\d+\s%/,
  );
});
