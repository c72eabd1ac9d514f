import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { wiresOf } from '../../src/course/claim.ts';
import { wiresToLink } from '../../src/files/link.ts';
import { loadShelf } from '../../src/files/site/course.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { LAPTOP } from './support/job.ts';
import { after, boxOf, caption, number, openStage, WHY, why } from './support/stage.ts';

test('Keys and a clicker go through the steps of a script, whose captions are on the screen', async () => {
  const page = await openStage(WHY);
  expect(await caption(page)).toBe(why.steps[0]?.says);
  expect(await after(page, 'ArrowRight')).toBe('2');
  expect(await caption(page)).toBe(why.steps[1]?.says);
  expect(await after(page, 'PageDown', 'Space')).toBe('4');
  expect(await after(page, 'ArrowLeft', 'PageUp')).toBe('2');
  expect(await after(page, 'End')).toBe(String(why.steps.length));
  expect(await after(page, 'ArrowRight')).toBe(String(why.steps.length));
  expect(await after(page, 'Home')).toBe('1');
  expect(await after(page, '5')).toBe('5');
  // Whoever hears the page is told the same.
  expect(await page.locator('.stage [aria-live]').textContent()).toBe(`Step 5 of 8. ${why.steps[4]?.says}`);
});

test('The letters are at least 20 px in full screen on a screen of 1366 × 768, in every drawing', async () => {
  const page = await openStage('/stage/unvented-three-port/');
  for (const view of ['', 'circuit', 'pipework']) {
    await page.getByLabel(/^Drawing/).selectOption(view);
    await page.getByRole('button', { name: 'Full screen' }).click();
    await page.locator('.stage.presenting').waitFor();
    const least = await page.locator('.screen .pane').evaluate((pane) => {
      const words = [...pane.querySelectorAll('svg text')].filter((text) => !text.matches('.code'));
      const sizes = words.map((text) => {
        const matrix = (text as SVGTextElement).getScreenCTM();
        return Number.parseFloat(getComputedStyle(text).fontSize) * (matrix?.a ?? 0);
      });
      return Math.min(...sizes);
    });
    expect(least, view).toBeGreaterThanOrEqual(19.99);
    await page.keyboard.press('f');
    await page.locator('.stage:not(.presenting)').waitFor();
  }
});

test('Full screen hides controls and pointer after a while, and a move brings them back', async () => {
  const page = await openStage(WHY);
  await page.keyboard.press('f');
  await page.locator('.stage.asleep').waitFor({ timeout: 15_000 });
  const bar = page.locator('.stage .bar');
  await expect.poll(() => bar.evaluate((one) => getComputedStyle(one).opacity)).toBe('0');
  expect(await page.locator('.stage .screen').evaluate((one) => getComputedStyle(one).cursor)).toBe('none');
  await page.mouse.move(300, 300);
  await page.mouse.move(310, 310);
  await expect.poll(() => bar.evaluate((one) => getComputedStyle(one).opacity)).toBe('1');
  await page.locator('.stage.asleep').waitFor({ timeout: 15_000 });
  await page.keyboard.press('Tab');
  await expect.poll(() => bar.evaluate((one) => getComputedStyle(one).opacity)).toBe('1');
  await page.keyboard.press('Escape');
  await page.locator('.stage:not(.presenting)').waitFor();
});

test('Letters can be switched off as keys; arrows go on working, and the choice is kept', async () => {
  const page = await openStage(WHY);
  await page.keyboard.press('h');
  const listen = page.getByLabel(/Listen to letters/);
  await listen.uncheck();
  await page.getByRole('button', { name: 'Close' }).click();
  expect(await after(page, '5')).toBe('1');
  expect(await after(page, 'ArrowRight')).toBe('2');
  await page.keyboard.press('f');
  expect(await page.locator('.stage.presenting').count()).toBe(0);
  await page.reload();
  await page.locator('.stage[data-ready] .slide').waitFor();
  expect(await after(page, '5')).toBe('1');
});

test('The spotlight leaves what the script names in the light, and goes by key to what is chosen, the pointer and off', async () => {
  const page = await openStage(WHY);
  const light = page.locator('.screen [data-light] path');
  await light.waitFor();
  /** Whether a point is in the dark, by the path itself. */
  const isDark = (spot: string) =>
    page
      .locator(`.screen [data-pane] [data-spot="${spot}"]`)
      .first()
      .evaluate((element) => {
        const path = document.querySelector('.screen [data-light] path') as SVGGeometryElement;
        const home = (document.querySelector('.screen .slide') as Element).getBoundingClientRect();
        const box = element.getBoundingClientRect();
        return path.isPointInFill(
          new DOMPoint(box.left + box.width / 2 - home.left, box.top + box.height / 2 - home.top),
        );
      });
  expect(await isDark('two-port')).toBe(false);
  expect(await isDark('boiler')).toBe(true);
  await page.keyboard.press('s');
  expect(await light.count()).toBe(0);
  await page.getByRole('checkbox', { name: 'Boiler' }).check();
  await light.waitFor();
  expect(await isDark('boiler')).toBe(false);
  expect(await isDark('two-port')).toBe(true);
  await page.keyboard.press('s');
  await expect.poll(() => light.count()).toBe(0);
  const box = await boxOf(page.locator('.screen .pane').first());
  await page.mouse.move(box.x + 200, box.y + 150);
  await light.waitFor();
  await page.keyboard.press('s');
  await expect.poll(() => light.count()).toBe(0);
});

test('The pen draws on its own step, is undone and erased, and is there after a reload', async () => {
  const page = await openStage(WHY);
  const ink = page.locator('.screen [data-ink] path');
  await page.keyboard.press('p');
  const box = await boxOf(page.locator('.screen'));
  const draw = async (y: number) => {
    await page.mouse.move(box.x + 300, box.y + y);
    await page.mouse.down();
    await page.mouse.move(box.x + 500, box.y + y, { steps: 5 });
    await page.mouse.up();
  };
  await draw(200);
  await page.getByRole('button', { name: 'Violet' }).click();
  await draw(260);
  expect(await ink.count()).toBe(2);
  const colours = await ink.evaluateAll((paths) => paths.map((path) => getComputedStyle(path).stroke));
  expect(new Set(colours).size).toBe(2);
  await page.keyboard.press('ArrowRight');
  expect(await ink.count()).toBe(0);
  await page.keyboard.press('ArrowLeft');
  expect(await ink.count()).toBe(2);
  await page.keyboard.press('z');
  expect(await ink.count()).toBe(1);
  await page.keyboard.press('e');
  await page.mouse.click(box.x + 400, box.y + 201);
  expect(await ink.count()).toBe(0);
  await page.keyboard.press('z');
  expect(await ink.count()).toBe(1);
  await page.reload();
  await page.locator('.stage[data-ready] .slide').waitFor();
  expect(await ink.count()).toBe(1);
});

test('Light and dark are the stage’s own, whatever the site has', async () => {
  const page = await openStage(WHY);
  const ground = () =>
    page.locator('.screen .slide').evaluate((slide) => getComputedStyle(slide).backgroundColor);
  const site = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const [before, page0] = [await ground(), await site()];
  await page.keyboard.press('l');
  expect(await ground()).not.toBe(before);
  expect(await site()).toBe(page0);
  await page.keyboard.press('l');
  expect(await ground()).toBe(before);
});

test('Any system follows the live of any call, and a wiring out of a link is shown', async () => {
  const { layout } = loadShelf();
  const one = layout('two-two-ports');
  const page = await openStage(`/stage/${one.id}/`);
  await page.getByLabel(/^Follow a call/).selectOption({ label: 'Heating' });
  await page.keyboard.press('End');
  expect(await caption(page)).toContain('the boiler fires');
  expect(await page.locator('.screen .big-strip .here').count()).toBeGreaterThan(0);
  const wires = wiresOf(one).filter((wire) => !wire.includes('heating-valve/brown'));
  expect(wires).toHaveLength(wiresOf(one).length - 1);
  await page.goto(`${page.url().split('#')[0]}#w=${wiresToLink(one.system, wires)}`);
  await expect.poll(() => page.getByLabel(/^Wiring/).inputValue()).toBe('own');
  await page.getByLabel(/^Follow a call/).selectOption({ label: 'Heating' });
  await page.locator('.stage').focus();
  await page.keyboard.press('End');
  expect(await caption(page)).toContain('The live does not get to');
});

const MINE = 'title: Mine\nsystem: three-port\nsteps:\n  - says: Off.\n    expect: { fires: false }\n';

test('A script of a tutor’s own is opened and shown, and is there after a reload', async () => {
  const page = await openPage({ path: '/stage/own/', ...LAPTOP, reducedMotion: true });
  await page.locator('[data-own-ready]').waitFor();
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'mine.yaml', mimeType: 'text/yaml', buffer: Buffer.from(MINE) });
  await page.locator('.stage[data-ready] .slide').waitFor();
  expect(await caption(page)).toBe('Off.');
  await page.reload();
  await page.locator('.stage[data-ready] .slide').waitFor();
  expect(await caption(page)).toBe('Off.');
});

test.each([
  [
    'a key that is misspelt',
    MINE.replace('says: Off', 'say: Off'),
    /mine\.yaml:4: steps\[0\].*expected.*says.*found "say"/,
  ],
  [
    'a caption that is not so',
    MINE.replace('false', 'true'),
    /mine\.yaml:5: steps\[0\]\.expect.*boiler fires: false/,
  ],
  ['no YAML at all', 'title: [', /mine\.yaml:1: .*expected YAML/],
])('A script with %s says the line and what was expected', async (_, text, says) => {
  const page = await openPage({ path: '/stage/own/', ...LAPTOP, reducedMotion: true });
  await page.locator('[data-own-ready]').waitFor();
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'mine.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
  await page.locator('.problems > ul > li').first().waitFor();
  expect(await page.locator('.problems > ul > li').allTextContents()).toEqual([expect.stringMatching(says)]);
  expect(await page.locator('.stage').count()).toBe(0);
});

test('On a phone caption, Back and Next are in sight below the drawing before anything is scrolled', async () => {
  const page = await openStage(WHY, { width: 360, height: 740, touch: true });
  const placeOf = (what: Locator) =>
    what.evaluate((element) => {
      const { top, bottom } = element.getBoundingClientRect();
      return { top, bottom };
    });
  const screen = await placeOf(page.locator('.screen'));
  const caption = await placeOf(page.locator('.screen [data-caption]'));
  const next = await placeOf(page.getByRole('button', { name: 'Next' }));
  expect(screen.top, 'where the drawing begins').toBeLessThan(160);
  expect(caption.top - screen.top).toBeGreaterThan(200);
  expect(caption.bottom, 'where the caption ends, and where Next begins').toBeLessThanOrEqual(next.top);
  expect(next.bottom, 'where Next ends, in a window of 740 px').toBeLessThanOrEqual(740);
});

test('On a phone the steps are swiped through, and nothing is wider than the screen', async () => {
  const page = await openStage(WHY, { width: 360, height: 800, touch: true });
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(360);
  const size = await page
    .locator('.screen [data-caption]')
    .evaluate((p) => Number.parseFloat(getComputedStyle(p).fontSize));
  expect(size).toBeGreaterThanOrEqual(16);
  const swipe = async (...places: number[]) => {
    for (const [k, type] of ['pointerdown', 'pointermove', 'pointerup'].entries())
      await page.locator('.screen').dispatchEvent(type, {
        clientX: places[Math.min(k, 1)],
        clientY: 300,
        pointerType: 'touch',
        isPrimary: true,
      });
  };
  await swipe(300, 100);
  await expect.poll(() => number(page)).toBe('2');
  await swipe(100, 300);
  await expect.poll(() => number(page)).toBe('1');
  await page.getByRole('button', { name: 'Next' }).tap();
  await expect.poll(() => number(page)).toBe('2');
});

test.each(['/stage/', WHY, '/stage/own/'])(
  '%s has nothing that axe finds against WCAG 2.2 AA',
  async (path) => {
    const page = await openPage({ path, ...LAPTOP, reducedMotion: true });
    if (path === WHY) {
      await page.locator('.stage[data-ready] .slide').waitFor();
      await page.keyboard.press('s');
      await page.keyboard.press('p');
    }
    if (path === '/stage/own/') await page.locator('[data-own-ready]').waitFor();
    await seeNoViolation(page, path);
    if (path !== WHY) return;
    await page.keyboard.press('h');
    await seeNoViolation(page, 'the keys');
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Pictures and video' }).click();
    await seeNoViolation(page, 'pictures and video');
  },
);
