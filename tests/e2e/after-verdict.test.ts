import type { BrowserContext, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { judgePlain } from '../../src/engine/grade/plain.ts';
import { jobOf, keptWires, keysOf, openJob, rightWires, systemOf, WHOLE, type Wire } from './support/job.ts';
import { failsOf, judgeButton, judgement, settings, titleOf, verdict } from './support/verdict.ts';

const right = rightWires();
const bypassed: readonly Wire[] = [...right, ['strip/6', 'strip/7']];
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** Opens a wired job, judges it and gives the requests it made for right wirings so far. */
async function judged(wires: readonly Wire[]): Promise<{ page: Page; asked: string[] }> {
  const asked: string[] = [];
  const prepare = (context: BrowserContext): void => {
    context.on('request', (request) => {
      if (/references\.json/.test(request.url())) asked.push(request.url());
    });
  };
  const page = await openJob({ wires, prepare });
  await judgeButton(page).click();
  await verdict(page).waitFor();
  return { page, asked };
}

test('Help comes in three levels, one press at a time', async () => {
  const { page } = await judged(bypassed);
  const levels = ['Where to look:', 'What is broken:', 'What to compare:'];
  const shown = async () => {
    const text = (await judgement(page).textContent()) ?? '';
    return levels.filter((level) => text.includes(level));
  };
  expect(await shown()).toEqual([]);
  for (const [k, question] of ['Where do I look?', 'What is broken?', 'What do I compare?'].entries()) {
    await press(page, question);
    expect(await shown()).toEqual(levels.slice(0, k + 1));
  }
  expect(await page.getByRole('button', { name: 'What do I compare?' }).count()).toBe(0);
});

test('No right wiring is fetched while the learner’s own is not accepted', async () => {
  const { page, asked } = await judged(bypassed);
  for (const question of ['Where do I look?', 'What is broken?', 'What do I compare?'])
    await press(page, question);
  expect(await page.getByRole('button', { name: /Compare with/ }).count()).toBe(0);
  expect(asked).toEqual([]);
  expect(await page.content()).not.toContain(jobOf(WHOLE).references.at(-1)?.title);
});

test('Once accepted, the learner’s wiring is compared with every right one, and can be swapped for one', async () => {
  const { page, asked } = await judged(right);
  expect(asked).toEqual([]);
  await page.getByRole('button', { name: /Compare with/ }).click();
  const sheet = page.getByRole('dialog', { name: 'Other right wirings' });
  await expect
    .poll(() => sheet.getByRole('heading', { level: 3 }).allInnerTexts())
    .toEqual(jobOf(WHOLE).references.map(({ title }) => title));
  expect(asked.length).toBe(1);
  const before = sheet.getByRole('article').filter({ hasText: 'Cut-out ahead of the thermostat' });
  expect(await before.getByRole('listitem').count()).toBeGreaterThan(0);
  const own = sheet.getByRole('article').filter({ hasText: 'Yours is this circuit' });
  expect(await own.first().textContent()).toContain('Cut-out after the thermostat');

  await before.getByRole('button', { name: 'Put it on the board' }).click();
  expect(await keptWires(page)).toEqual(keysOf(rightWires('cut-out-before-thermostat')));
  await page.keyboard.press('Escape');
  await press(page, 'Undo');
  expect(await keptWires(page)).toEqual(keysOf(right));
});

test('The table of states has a row for each state judged, marks those that fail and goes where one chooses', async () => {
  const { page } = await judged(bypassed);
  const found = judgePlain(systemOf(WHOLE), bypassed);
  const failing = new Set(
    [...found.broken.values()].flatMap((states) => [...states]).filter((state) => found.judged.has(state)),
  );
  await press(page, 'All states');
  const sheet = page.getByRole('dialog', { name: 'All states' });
  const rows = sheet.locator('tbody').getByRole('row');
  await rows.first().waitFor();
  expect(await rows.count()).toBe(found.judged.size);
  const bad = rows.filter({ hasText: /danger:|fault:/ });
  expect(await bad.count()).toBe(failing.size);
  await sheet.getByRole('checkbox', { name: 'Failing only' }).check();
  expect(await rows.count()).toBe(failing.size);

  const cells = await bad.nth(1).getByRole('cell').allInnerTexts();
  await bad.nth(1).getByRole('button').click();
  await sheet.waitFor({ state: 'detached' });
  // The button and the verdict come first, then the settings.
  expect(Object.values(await settings(page))).toEqual(cells.slice(2, 8));
});

test('Choosing another finding goes to its own failing state', async () => {
  const wires = bypassed.filter((wire) => !wire.includes('boiler/E'));
  const { page } = await judged(wires);
  const findings = judgement(page).getByRole('button', { name: /^(Danger|Fault)/ });
  expect(await findings.count()).toBeGreaterThan(2);
  await findings.filter({ hasText: failsOf('earthed') }).click();
  expect(await judgement(page).textContent()).toContain(`Rule: ${titleOf('earthed')}.`);
  await findings.filter({ hasText: failsOf('off-when-not-called') }).click();
  expect((await settings(page))['cut-out']).toBe('tripped');
});

test('A wire changed after the verdict takes the verdict away', async () => {
  const { page } = await judged(bypassed);
  await press(page, 'Clear');
  expect(await verdict(page).count()).toBe(0);
});
