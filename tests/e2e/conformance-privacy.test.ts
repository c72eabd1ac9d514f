import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type KeptThing, keptAs } from '../../src/pages/about/_kept.ts';
import { openPage } from './support/browser.ts';
import { openJob, rightWires } from './support/job.ts';
import { judgeButton, verdict } from './support/verdict.ts';

/*
  `openPage` itself fails a test whose page asks another site for anything. Here learners' pages are worked, and then
  everything is looked up that the browser keeps.
*/
async function seeOnlyWhatIsTold(page: Page): Promise<string[]> {
  const found = await page.evaluate(async () => ({
    'local storage': Object.keys(localStorage),
    'this tab': Object.keys(sessionStorage),
    database: (await indexedDB.databases()).map(({ name }) => name ?? ''),
    'offline copy': await caches.keys(),
  }));
  const untold = Object.entries(found).flatMap(([place, names]) =>
    names.filter((name) => !keptAs(name, place as KeptThing['place'])).map((name) => `${place}: ${name}`),
  );
  expect(untold).toEqual([]);
  expect(await page.context().cookies()).toEqual([]);
  expect(await page.evaluate(() => document.cookie)).toBe('');
  return Object.values(found).flat();
}

test('A wired and judged job leaves its wires on the device, and nothing that the privacy page does not name', async () => {
  const page = await openJob({ wires: rightWires() });
  await judgeButton(page).click();
  await verdict(page).waitFor();
  expect(await seeOnlyWhatIsTold(page)).toContain('switched-live/wiring/1/unvented-three-port');
});

test('Pages of every kind keep only what the privacy page names, set no cookie and ask nobody else', async () => {
  const page = await openPage({ path: '/' });
  for (const path of [
    '/lessons/follow-the-call/',
    '/practice/',
    '/progress/',
    '/callouts/cold-showers/',
    '/bench/?system=three-port',
    '/aid/',
    '/what-if/three-port/',
    '/drawings/three-port/',
    '/search/?q=valve',
    '/coursework/',
    '/mark-book/',
    '/author/coursework/',
    '/author/job/',
    '/stage/three-port/',
    '/paper/job/three-port/',
    '/about/privacy/',
  ]) {
    await page.goto(path);
    await page.waitForLoadState('networkidle');
    // The first buttons of a tool wake it.
    for (const button of await page
      .locator('main button:visible')
      .all()
      .then((all) => all.slice(0, 2)))
      await button.click({ timeout: 3000 }).catch(() => undefined);
    if (new URL(page.url()).pathname !== new URL(path, page.url()).pathname) continue;
    await seeOnlyWhatIsTold(page);
  }
}, 300_000);
