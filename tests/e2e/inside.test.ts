import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { lessonWith } from './support/lesson-with.ts';
import { pastTheSides, sidewaysScroll, smallTargets } from './support/measure.ts';

const valve = lessonWith('Inside', (tag) => tag.includes('mid-position-valve'));
const twoPort = lessonWith('Inside', (tag) => tag.includes('"two-port-valve'));
const inside = (page: Page, at = valve.at) => page.locator('.inside').nth(at);
const feed = (page: Page, name: RegExp, at = valve.at) => inside(page, at).getByRole('switch', { name });
const seeWords = (page: Page, words: string, at = valve.at) =>
  inside(page, at).locator('.words', { hasText: words }).waitFor();

describe('The mid-position valve with its cover off', () => {
  // Source of the positions: analyses published at energycontrols2.fsnet.co.uk ("3 port valves") and next.gr.
  test('White winds it to mid, where half a wave holds it; grey winds it on; and without power the spring takes it back', async () => {
    const page = await openPage({ path: valve.path });
    await seeWords(page, 'It rests at port B.');
    await feed(page, /^White/).click();
    await seeWords(page, 'The motor winds it on');
    await seeWords(page, 'it holds at mid');
    await seeWords(page, 'Half of every wave gets through.');
    await feed(page, /^Grey/).click();
    await seeWords(page, 'at port A. The motor stalls');
    await seeWords(page, 'Switch 2 operated: white to orange');
    await inside(page).getByRole('button', { name: 'Let power fail' }).click();
    await seeWords(page, 'The power has failed.');
    await seeWords(page, 'It rests at port B.');
    await inside(page).getByRole('button', { name: 'Power back on' }).click();
    await seeWords(page, 'at port A. The motor stalls');
  });

  test('It can be worked with the keys alone', async () => {
    const page = await openPage({ path: valve.path, reducedMotion: true });
    await feed(page, /^White/).focus();
    await page.keyboard.press('Space');
    await seeWords(page, 'it holds at mid');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await seeWords(page, 'at port A. The motor stalls');
  });

  test('Its quadrant and its ball are seen to move on the way, not only at the stops', async () => {
    const page = await openPage({ path: valve.path });
    const ball = inside(page).locator('.ball');
    const seen = new Set<string>();
    await feed(page, /^White/).click();
    await expect
      .poll(
        async () => {
          seen.add((await ball.getAttribute('cx')) ?? '');
          return seen.size;
        },
        { interval: 60, timeout: 10_000 },
      )
      .toBeGreaterThan(4);
  });
});

test('The two-port valve opens while brown is live, makes its end switch at the end, and shuts without power', async () => {
  const page = await openPage({ path: twoPort.path });
  await feed(page, /^Brown/, twoPort.at).click();
  await seeWords(page, 'End switch: grey to orange', twoPort.at);
  await seeWords(page, 'Open: in to out.', twoPort.at);
  await inside(page, twoPort.at).getByRole('button', { name: 'Let power fail' }).click();
  await seeWords(page, 'It rests shut.', twoPort.at);
});

test.each([
  ['mid-position valve', valve.path],
  ['two-port valve', twoPort.path],
])('The lesson with the %s fits a phone, and axe finds nothing in either theme', async (_, path) => {
  const page = await openPage({ path, width: 360, height: 800, touch: true, reducedMotion: true });
  expect(await sidewaysScroll(page)).toBe(0);
  expect(await pastTheSides(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await seeNoViolation(page, path);
});
