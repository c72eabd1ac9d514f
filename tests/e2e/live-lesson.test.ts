import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { lessonWith } from './support/lesson-with.ts';
import { pastTheSides, sidewaysScroll, smallTargets } from './support/measure.ts';

const scripted = lessonWith('Live', (tag) => (tag.match(/says:/g)?.length ?? 0) >= 3);
const views = (['strip', 'schematic', 'pipes'] as const).map(
  (view) => [view, lessonWith('Live', (tag) => tag.includes(`view="${view}"`))] as const,
);
const circuitOf = (page: Page, at: number) => page.locator('.live-circuit').nth(at);

/** Letters in a live circuit that are drawn smaller than so many pixels, with their size. */
const smallLetters = (page: Page, least: number) =>
  page.locator('.live-circuit').evaluateAll(
    (circuits, px) =>
      circuits.flatMap((circuit) =>
        [...circuit.querySelectorAll('*')].flatMap((element) => {
          const own = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
          if (!own || !element.checkVisibility()) return [];
          const scale = element instanceof SVGGraphicsElement ? (element.getScreenCTM()?.a ?? 1) : 1;
          const size = Number.parseFloat(getComputedStyle(element).fontSize) * scale;
          return size < px ? [`${element.textContent?.trim().slice(0, 20)}: ${size.toFixed(1)}`] : [];
        }),
      ),
    least,
  );

test('Without scripts the first state and every step in words can be read', async () => {
  const page = await openPage({ path: scripted.path, scripts: false });
  const circuit = circuitOf(page, scripted.at);
  expect(await circuit.locator('.now').textContent()).toMatch(/on the strip/);
  const words = page.locator('.in-words').first();
  await words.locator('summary').click();
  const steps = await words.locator('li').allTextContents();
  expect(steps.length).toBeGreaterThanOrEqual(3);
  for (const step of steps) expect(step).toMatch(/on the strip/);
});

describe('A live circuit in a lesson', () => {
  test('Its other views are fetched when asked for, and show the same state', async () => {
    const page = await openPage({ path: scripted.path });
    const circuit = circuitOf(page, scripted.at);
    const now = await circuit.locator('.now').textContent();
    await circuit.getByRole('button', { name: 'Schematic' }).click();
    await circuit.locator('.circuit-figure').waitFor();
    await circuit.getByRole('button', { name: 'Pipes' }).click();
    await circuit.locator('.plant').waitFor();
    await circuit.getByRole('button', { name: 'Strip' }).click();
    await circuit.locator('.ways').waitFor();
    expect(await circuit.locator('.now').textContent()).toBe(now);
  });

  test('Its script goes to the end and starts again, each step in words', async () => {
    const page = await openPage({ path: scripted.path, reducedMotion: true });
    const circuit = circuitOf(page, scripted.at);
    const first = await circuit.locator('.says').textContent();
    const [, last] = /of (\d+)/.exec((await circuit.locator('.count').textContent()) ?? '') ?? [];
    for (let step = 2; step <= Number(last); step++) {
      await circuit.getByRole('button', { name: 'Next' }).click();
      await circuit.locator('.count', { hasText: `${step} of` }).waitFor();
    }
    await circuit.getByRole('button', { name: 'Start again' }).click();
    await circuit.locator('.count', { hasText: '1 of' }).waitFor();
    expect(await circuit.locator('.says').textContent()).toBe(first);
  });

  test('A switch that is worked changes what is live, leaves the script, and Next goes back to it', async () => {
    const page = await openPage({ path: scripted.path });
    const circuit = circuitOf(page, scripted.at);
    const switches = circuit.locator('details.switches');
    if (!(await switches.evaluate((details: HTMLDetailsElement) => details.open)))
      await switches.locator('summary').click();
    const supply = circuit.getByRole('switch', { name: /^Supply/ });
    const was = await supply.getAttribute('aria-checked');
    await supply.click();
    await circuit.getByText('You have worked the switches.').waitFor();
    expect(await supply.getAttribute('aria-checked')).not.toBe(was);
    await circuit.getByRole('button', { name: 'Next' }).click();
    await circuit.locator('.count', { hasText: '2 of' }).waitFor();
  });

  test('A link to its state wakes it there and nowhere else, and the drawings open with its wiring', async () => {
    const page = await openPage({ path: scripted.path });
    const circuit = circuitOf(page, scripted.at);
    await circuit.getByRole('button', { name: 'Next' }).click();
    await circuit.locator('.count', { hasText: '2 of' }).waitFor();
    const says = await circuit.locator('.says').textContent();
    const still = async () => {
      const now = await circuit.locator('.now').textContent();
      return now?.includes('Now the') ? undefined : now;
    };
    await expect.poll(still, { timeout: 10_000 }).toBeDefined();
    const link = await circuit.getByRole('link', { name: 'Link to this state' }).getAttribute('href');
    const drawings = await circuit.getByRole('link', { name: 'All three drawings' }).getAttribute('href');
    const other = await openPage({ path: `${scripted.path}${link}` });
    await circuitOf(other, scripted.at).locator('.count', { hasText: '2 of' }).waitFor();
    expect(await circuitOf(other, scripted.at).locator('.says').textContent()).toBe(says);
    expect(await other.locator('astro-island[data-awake]').count()).toBe(1);
    const drawn = await openPage({ path: drawings ?? '' });
    await drawn.locator('.drawings[data-ready]').waitFor();
    expect(await drawn.getByRole('combobox', { name: /^Wiring/ }).inputValue()).toBe('own');
    expect(await drawn.getByRole('alert').count()).toBe(0);
  });
});

describe.each(views)('A lesson that opens with the %s', (_, { path }) => {
  test('On a phone nothing sticks out, no letter is under 11 pixels, and every target is big enough', async () => {
    const page = await openPage({ path, width: 360, height: 800, touch: true });
    expect(await sidewaysScroll(page)).toBe(0);
    expect(await pastTheSides(page)).toEqual([]);
    expect(await smallLetters(page, 10.9)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
  });

  test('axe finds nothing in either theme', async () => {
    const page = await openPage({ path, reducedMotion: true });
    await seeNoViolation(page, path);
  });
});
