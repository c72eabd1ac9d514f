import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { wiresToLink } from '../../src/files/link.ts';
import { librarySystems } from '../engine/support/library.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { LAPTOP } from './support/job.ts';

/** The page of a system once its scripts are at work: what is touched before that is not heard. */
async function openDrawings(system: string, more: { width?: number; height?: number; theme?: 'dark' } = {}) {
  const page = await openPage({ path: `/drawings/${system}/`, ...LAPTOP, ...more });
  await page.locator('.drawings[data-ready]').waitFor();
  return page;
}

test('Touching a conductor in the strip lights it in all three drawings and names it', async () => {
  const page = await openDrawings('three-port');
  const strip = page.getByRole('listbox', { name: /^Strip/ });
  const schematic = page.getByRole('listbox', { name: /^Schematic/ });
  await page.locator('.strip-figure .letters').getByText('6', { exact: true }).click();
  const says = page.locator('.says');
  await says
    .getByText(
      'Terminal 6: cylinder thermostat CALL, orange of the three-port valve, pump L, boiler SL. Live.',
    )
    .waitFor();
  for (const drawing of [strip, schematic])
    expect(await drawing.getByRole('option', { selected: true }).getAttribute('aria-label')).toMatch(
      /^Terminal 6:/,
    );
  const ringed = await page
    .locator('[data-ring]')
    .evaluateAll((rings) => rings.map((ring) => ring.getAttribute('data-ring')));
  expect(ringed.sort()).toEqual(['boiler', 'pump', 'three-port']);
});

test('Arrow keys in the schematic go from conductor to conductor with one stop of the tab key', async () => {
  const page = await openDrawings('three-port');
  const schematic = page.getByRole('listbox', { name: /^Schematic/ });
  await schematic.focus();
  await page.keyboard.press('ArrowDown');
  const first = await page.locator('.says').textContent();
  await page.keyboard.press('ArrowDown');
  expect(await page.locator('.says').textContent()).not.toBe(first);
  expect(await page.getByRole('option', { selected: true }).count()).toBeGreaterThanOrEqual(2);
  expect(await page.locator('.drawings .drawing [tabindex="0"]').count()).toBe(2);
});

test('Following a call with the keys comes to the boiler, marked in all three drawings', async () => {
  const page = await openDrawings('two-two-ports');
  await page.getByLabel('Follow a call').selectOption({ label: 'Heating' });
  await page.getByRole('button', { name: 'Follow the live' }).click();
  await page.getByText('Step 1 of').waitFor();
  const next = page.getByRole('button', { name: 'Next' });
  await next.focus();
  const [, last] = /of (\d+)/.exec((await page.locator('.count').textContent()) ?? '') ?? [];
  for (let step = 1; step < Number(last); step++) await page.keyboard.press('ArrowRight');
  expect(await page.locator('.says').textContent()).toContain('the boiler fires.');
  expect(await page.locator('[data-ring]').getAttribute('data-ring')).toBe('boiler');
  expect(await page.locator('[data-symbol] rect.here').count()).toBe(1);
  expect(await page.locator('.strip-figure .box.marked').count()).toBe(1);
  await page.keyboard.press('ArrowLeft');
  expect(await page.locator('.count').textContent()).toBe(`Step ${Number(last) - 1} of ${last}`);
});

test('Working a switch lights what goes live, and the loads at work are marked', async () => {
  const page = await openDrawings('three-port');
  const firing = page.locator('[data-symbol^="load"][data-works="true"]');
  const before = await firing.count();
  await page.getByRole('switch', { name: /Supply/ }).click();
  expect(await firing.count()).toBe(0);
  expect(before).toBeGreaterThan(0);
});

test.each(['Schematic', 'Strip', 'Pipework'])('%s downloads as an SVG that stands alone', async (title) => {
  const page = await openDrawings('unvented-three-port', { theme: 'dark' });
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: `Download SVG: ${title.toLowerCase()}` }).click();
  const file = await coming;
  expect(file.suggestedFilename()).toBe(`unvented-three-port-${title.toLowerCase()}.svg`);
  const folder = await mkdtemp(join(tmpdir(), 'drawings-'));
  const path = join(folder, file.suggestedFilename());
  await file.saveAs(path);
  const text = await readFile(path, 'utf8');
  await rm(folder, { recursive: true });
  const seen = await page.evaluate((source) => {
    const read = new DOMParser().parseFromString(source, 'image/svg+xml');
    return {
      broken: read.querySelector('parsererror') !== null,
      title: read.querySelector('svg > title')?.textContent,
      desc: read.querySelector('svg > desc')?.textContent,
      paths: read.querySelectorAll('path, rect, circle').length,
    };
  }, text);
  expect(seen.broken).toBe(false);
  expect(seen.title).toContain('Three-port');
  expect(seen.desc).not.toBe('');
  expect(seen.paths).toBeGreaterThan(20);
  // Nothing of the page is left in it, and nothing is fetched.
  expect(text).not.toMatch(/class=|style=|var\(|href=|light-dark/);
  const used = [...text.matchAll(/url\(([^)]*)\)/g)].map(([, name]) => name?.replace(/['"]/g, ''));
  for (const name of used) expect(text).toContain(`id="${name?.slice(1)}"`);
});

test('A wiring shared by link is drawn like any other, and a broken link says so', async () => {
  const found = librarySystems.find(({ id }) => id === 'three-port');
  if (!found) throw new Error('three-port is not there');
  const shared = wiresToLink(found.system, [['spur/L', 'strip/7']]);
  const page = await openPage({ path: `/drawings/three-port/#w=${shared}`, ...LAPTOP });
  await page.getByLabel('Light a conductor').selectOption({ label: 'Terminal 7: fused spur L. Live.' });
  expect(await page.locator('.strip-figure .core').count()).toBe(1);
  await page.evaluate(() => {
    location.hash = '#w=broken';
  });
  expect(await page.getByRole('alert').textContent()).toMatch(/link/);
});

test('On a phone nothing sticks out sideways, and each drawing scrolls in its own frame', async () => {
  const page = await openDrawings('unvented-three-port', { width: 360, height: 800 });
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(over).toBeLessThanOrEqual(0);
  expect(await page.locator('.schematic .drawing').evaluate((box) => box.scrollWidth > box.clientWidth)).toBe(
    true,
  );
});

test('On paper each drawing has a sheet of A4 to itself', async () => {
  const page = await openDrawings('two-two-ports');
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)?.length).toBe(3);
  // A4 on its side: 297 by 210 mm (ISO 216), in points.
  const box = /MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)?.slice(1).map(Number) ?? [];
  expect(box.map((points) => Math.round((points * 25.4) / 72))).toEqual([297, 210]);
});

test('The drawings and their list break no rule of WCAG 2.2 AA in either theme', async () => {
  const page = await openDrawings('three-port');
  await seeNoViolation(page, 'drawings');
  await seeNoViolation(await openPage({ path: '/drawings/', ...LAPTOP }), 'list of drawings');
});
