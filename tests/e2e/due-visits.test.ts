import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Trial } from '../../src/course/trial.ts';
import { loadCallouts } from '../../src/files/site/callouts.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { LAPTOP, PHONE } from './support/job.ts';

const DAY = 86_400_000;

/** Three visits to faults of one kind, the last of them 200 days ago: solid, and due. */
const log = (): Trial[] =>
  [3, 2, 1].map((k) => ({
    at: Date.now() - 200 * DAY - k,
    objective: 'callout-no-heating',
    item: `callout/three-port/${k}/1`,
    method: 'callout',
    right: true,
    attempt: 1,
    hints: 0,
    shown: 0,
    took: 600_000,
    mode: 'callout',
  }));
/** A visit that was left before anything was said. */
const left = () => ({
  id: 'callout/three-port/9/1 1',
  callout: 'callout/three-port/9/1',
  acts: [{ do: 'isolate' }],
  wheels: [],
  at: Date.now(),
  took: 1000,
  done: false,
});

const ready = (page: Page) => page.locator('[data-ready]').waitFor();

/** Opens a page as this learner finds it. */
async function openAs(path: string, size: object): Promise<Page> {
  const page = await openPage({ ...size, path: '/progress/' });
  await ready(page);
  await page.evaluate(
    ([trials, visit]) =>
      new Promise<void>((done, fail) => {
        const asked = indexedDB.open('switched-live');
        asked.onerror = fail;
        asked.onsuccess = () => {
          const change = asked.result.transaction(['trials', 'visits'], 'readwrite');
          for (const trial of trials) change.objectStore('trials').put(trial);
          change.objectStore('visits').put(visit);
          change.oncomplete = () => {
            asked.result.close();
            done();
          };
          change.onabort = fail;
        };
      }),
    [log(), left()] as const,
  );
  await page.goto(new URL(path, page.url()).href);
  await page.reload();
  return page;
}

describe('Somebody whose visits are due', () => {
  test.each([
    ['a laptop', LAPTOP],
    ['a phone', PHONE],
  ])('sees on %s which faults they can find, and can go on with the visit they left', async (_, size) => {
    const page = await openAs('/progress/', size);
    await ready(page);
    const callouts = page.getByRole('region', { name: 'Faults you can find' });
    expect(await callouts.textContent()).toContain('1 of 7 solid, 1 due');
    expect(
      await callouts
        .getByRole('link', { name: /^You can find out why the heating stays cold/ })
        .textContent(),
    ).toMatch(/Solid: 3 of 3 right without help.*To revise now/);
    expect(
      await callouts.getByRole('link', { name: 'Go on with the visit you left' }).getAttribute('href'),
    ).toMatch(/\/callouts\/visit\/#callout\/three-port\/9\/1$/);
    expect(await page.locator('body').textContent()).toContain('1 visit due');
    await seeNoViolation(page, 'progress with callouts');
  });

  test('is led from practice to a callout of that kind that is new to them', async () => {
    const page = await openAs('/practice/#revise', LAPTOP);
    await page.getByText('Only visits are due.').waitFor();
    await seeNoViolation(page, 'practice with visits due');
    await page.getByRole('button', { name: 'You can find out why the heating stays cold' }).click();
    await page.waitForURL(/\/callouts\/[a-z-]+\/$/);
    const id = new URL(page.url()).pathname.split('/').at(-2);
    expect(loadCallouts().map((callout) => callout.id)).toContain(id);
  });

  test('is told when an address names no kind of fault', async () => {
    const page = await openAs('/practice/#visit=ghosts', LAPTOP);
    await ready(page);
    expect(await page.getByRole('alert').textContent()).toContain('There is no such visit.');
  });
});
