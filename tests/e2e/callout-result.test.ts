import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Trial } from '../../src/course/trial.ts';
import type { Act } from '../../src/engine/diagnose/act.ts';
import { makeBench } from '../../src/engine/diagnose/bench.ts';
import { expertRoute } from '../../src/engine/diagnose/expert.ts';
import { judgeVisit } from '../../src/engine/diagnose/judge.ts';
import { candidatesFor, makeCalloutFrom } from '../../src/files/callout-pack.ts';
import { loadCallouts, loadDoubleFaults } from '../../src/files/site/callouts.ts';
import { siteShelf } from '../../src/files/site/shelf.ts';
import { walkOf } from '../../src/ui/callout/walk.ts';
import { seeNoViolation } from './support/axe.ts';
import { type Opening, openPage } from './support/browser.ts';
import { LAPTOP, PHONE } from './support/job.ts';
import { leaveVisit, visitOf } from './support/visit.ts';

/** An authored callout on the common three-port system, with everything that may be wrong there. */
const file = loadCallouts().find(({ system }) => system === 'three-port');
if (!file) throw new Error('no callout on the three-port system');
const layout = siteShelf().layout(file.system);
const callout = makeCalloutFrom(layout, file);
const bench = makeBench(layout.system);
const candidates = candidatesFor(layout, file.wiring, loadDoubleFaults());
const route = expertRoute(bench, callout, candidates);
const sound: Act[] = route.entries.flatMap(({ step }) => [...step.acts, { do: 'test', test: step.test }]);

/** The result of a visit with these acts, as its page shows it. */
async function result(acts: readonly Act[], said: string, opening: Partial<Opening> = {}): Promise<Page> {
  const page = await openPage({ ...LAPTOP, ...opening, path: `/callouts/${file?.id}/` });
  await page.locator('[data-ready]').waitFor();
  await leaveVisit(page, visitOf(file?.id ?? '', acts, said));
  await page.reload();
  await page.locator('[data-result="ready"]').waitFor({ timeout: 30_000 });
  return page;
}
const title = (page: Page) => page.locator('#result-heading').textContent();

describe('The result of a visit', () => {
  test('A sound visit is found and proved, and each of its tests says what it left and what it ruled out', async () => {
    const page = await result(sound, callout.fault.id);
    expect(await title(page)).toBe('Found, and proved');
    const verdict = judgeVisit(bench, callout, candidates, sound, callout.fault);
    const rows = page.getByRole('region', { name: 'What each test told' }).locator('ol > li');
    expect(await rows.count()).toBe(walkOf(verdict.trail).length);
    const [first] = verdict.trail;
    expect(await rows.first().textContent()).toContain(`${first?.before} → ${first?.after}`);
    await expect.poll(() => rows.first().textContent()).toMatch(/It (cleared|ruled out) /);
    expect(await page.getByText('Every step was safe.').isVisible()).toBe(true);
    expect(await page.getByText(file.after.slice(0, 40)).isVisible()).toBe(true);
  });

  test('The shortest sound route stands there as numbered steps that end with the fault', async () => {
    const page = await result(sound, callout.fault.id);
    const steps = page.getByRole('region', { name: 'The shortest sound route' });
    expect(await steps.locator('ol > li').count()).toBe(route.entries.length);
    const says = callout.fault.says;
    expect(await steps.textContent()).toContain(says.slice(1));
  });

  test('A right answer after one look is called a lucky guess, and the test that was missing is named', async () => {
    const page = await result([{ do: 'test', test: { kind: 'works', part: 'boiler' } }], callout.fault.id);
    expect(await title(page)).toBe('Right, but a lucky guess');
    expect(await page.getByText(/What you saw still fits \d+ other fault/).isVisible()).toBe(true);
    await page.getByRole('heading', { name: 'The test that was missing' }).waitFor();
  });

  test('A wrong answer says what it was, and what the learner said', async () => {
    const wrong = candidates.find(({ id }) => id === 'nothing');
    const page = await result(sound, wrong?.id ?? '');
    expect(await title(page)).toBe('That is not what is wrong');
    const text = await page.locator('.result .answer').first().textContent();
    expect(text).toContain(callout.fault.says);
    expect(text).toContain(wrong?.says);
  });

  test('A cover taken off live stands in the result with what could have happened', async () => {
    const page = await result([{ do: 'open', part: 'strip' }, ...sound], callout.fault.id);
    expect(await title(page)).toBe('Found and proved, but not safely');
    const unsafe = page.getByRole('region', { name: 'What was not safe' });
    expect(await unsafe.textContent()).toMatch(/You took a cover off with the supply on\./);
  });

  test('The result passes axe and fits a phone', async () => {
    const page = await result(sound, callout.fault.id, PHONE);
    await seeNoViolation(page, 'the result');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  });
});

describe('The end of a visit', () => {
  /** The learner's log on this device. */
  const log = (page: Page): Promise<readonly Trial[]> =>
    page.evaluate(
      () =>
        new Promise<readonly Trial[]>((done, fail) => {
          const asked = indexedDB.open('switched-live');
          asked.onerror = fail;
          asked.onsuccess = () => {
            const all = asked.result.transaction('trials').objectStore('trials').getAll();
            all.onsuccess = () => {
              asked.result.close();
              done(all.result);
            };
          };
        }),
    );

  test('A visit that ends on the page goes into the log once, and its wheels count as help that was given', async () => {
    const page = await openPage({ ...LAPTOP, path: `/callouts/${file.id}/` });
    const wheels = page.getByRole('group', { name: 'Help with this search' });
    for (const box of await wheels.getByRole('checkbox').all())
      await expect.poll(() => box.isChecked()).toBe(true);
    await page.getByText(/faults still fit/).waitFor();
    await page.getByText('Nothing is wrong').click();
    await page.getByRole('button', { name: 'That is what is wrong' }).click();
    await page.locator('[data-result="ready"]').waitFor({ timeout: 30_000 });
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('result-heading');
    await expect.poll(async () => (await log(page)).length).toBe(1);
    // Nothing was tested, and the search that the wheels began goes on for the result.
    await page.getByText('You took no test at all.').waitFor();
    await page.getByRole('heading', { name: 'The test that was missing' }).waitFor();
    expect((await log(page))[0]).toMatchObject({
      item: `callout/${file.id}`,
      mode: 'callout',
      right: false,
      attempt: 1,
      hints: 0,
      shown: 3,
    });
    await page.reload();
    await page.locator('[data-result="ready"]').waitFor({ timeout: 30_000 });
    expect((await log(page)).length).toBe(1);
  });
});
